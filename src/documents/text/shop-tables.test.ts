import { describe, expect, it } from 'vitest'
import { DEFAULT_SHOP, readShopTables, shopTablesText } from './shop-tables.js'

describe('the tables a shop edits', () => {
  it('read back as written', () => {
    expect(readShopTables(shopTablesText(DEFAULT_SHOP), 'shop.json')).toEqual({ shop: DEFAULT_SHOP, faults: [] })
  })

  it('take a word and a tool of the shop', () => {
    const text = shopTablesText(DEFAULT_SHOP).replace('"(HIT)"', '"M75"').replace('"diameterMm": 3.3', '"diameterMm": 3.25')
    const { shop } = readShopTables(text, 'shop.json')
    expect([shop!.words.hit, shop!.tools[1].diameter]).toEqual(['M75', 0.00325])
  })

  it('are refused in sentences', () => {
    expect(readShopTables('{', 'shop.json').faults[0]).toContain('shop.json is not JSON')
    expect(readShopTables(shopTablesText(DEFAULT_SHOP).replace('"hit"', '"hitt"'), 'shop.json').faults.join(' ')).toContain('words')
    expect(readShopTables(shopTablesText(DEFAULT_SHOP).replace('X{x} ', ''), 'shop.json').faults[0]).toContain('no {x}')
    expect(readShopTables(shopTablesText(DEFAULT_SHOP).replace('"tool": 2', '"tool": 1'), 'shop.json').faults).toEqual([
      'shop.json has tool 1 twice. Give each its own number.',
    ])
  })
})
