/** The picture itself: what the worker sent, in three buffers, drawn when somebody asks. */
import {
  BufferGeometry,
  DataTexture,
  DoubleSide,
  GLSL3,
  LineSegments,
  Matrix4,
  Mesh,
  OrthographicCamera,
  Points,
  RGBAFormat,
  Scene,
  ShaderMaterial,
  UnsignedByteType,
  Vector3,
  Vector4,
  WebGLRenderer,
  WebGLRenderTarget,
} from 'three'
import { axesOf, type Turned } from '../../desk/space/turned.js'
import { type Layers, linesOf, outsideOf, rivetsOf, sheetsOf } from './buffers.js'
import type { Held } from './held.js'
import type { Ink, SpaceInks } from './inks.js'
import { LINE_FRAGMENT, LINE_VERTEX, RIVET_FRAGMENT, RIVET_VERTEX, SHEET_FRAGMENT, SHEET_VERTEX } from './shaders.js'
import { smoother } from './smooth.js'

/** Parts in a row of the texture, and rows: far more than a coach has. */
const [ACROSS, ROWS] = [512, 8] as const
/** Half the depth that is seen, m: a coach drawn apart is far within it. */
const DEEP = 30
/** Pixels of depth between two layers that are seen square on, or half of it. */
const LAYER = 3

export interface Cut {
  /** x, y, z of the normal, toward what is taken away, and how far along it */
  readonly normal: readonly [number, number, number]
  readonly at: number
}

export interface Picture {
  readonly setSize: (width: number, height: number, ratio: number) => void
  /** another set of meshes, or another choice of layers */
  readonly load: (held: Held, layers: Layers) => void
  /** a colour for each part, whether it has none to show, whether it is chosen */
  readonly colour: (
    inks: SpaceInks,
    of: readonly { readonly ink: Ink; readonly isNone: boolean; readonly isChosen: boolean }[],
    hatch: boolean,
    gaps: boolean,
  ) => void
  /** whether it was drawn roughly, which only happens on the way and where the machine is slow */
  readonly draw: (at: Turned, apart: number, cut: Cut | null, isOnTheWay: boolean) => boolean
  /** number of the part under a place of the picture, in pixels from its upper left; null for paper */
  readonly pick: (x: number, y: number) => number | null
  readonly dispose: () => void
}

/** Null where the browser has no such thing as a picture in space. */
export function pictureOn(canvas: HTMLCanvasElement): Picture | null {
  const renderer = rendererOn(canvas)
  if (!renderer) return null
  renderer.setClearAlpha(0)
  const data = new Uint8Array(ACROSS * ROWS * 4)
  const parts = new DataTexture(data, ACROSS, ROWS, RGBAFormat, UnsignedByteType)
  const uniforms = {
    uParts: { value: parts },
    uApart: { value: 0 },
    uCut: { value: new Vector4() },
    uPick: { value: 0 },
    uPixel: { value: 0.005 },
    uDeep: { value: 2 * DEEP },
    uBody: { value: new Vector3() },
    uReach: { value: new Vector3() },
    uEye: { value: new Vector3() },
    uStep: { value: 0 },
    uGaps: { value: 0 },
    uHatch: { value: 0 },
    uInk: { value: new Vector3() },
    uFaint: { value: new Vector3() },
    uAccent: { value: new Vector3() },
    uSheet: { value: new Vector3() },
    uShade: { value: new Vector3() },
    uRamp: { value: [new Vector3(), new Vector3(), new Vector3()] },
  }
  const material = (vertexShader: string, fragmentShader: string): ShaderMaterial =>
    new ShaderMaterial({ glslVersion: GLSL3, defines: {}, uniforms, vertexShader, fragmentShader, side: DoubleSide })
  const sheetInk = material(SHEET_VERTEX, SHEET_FRAGMENT)
  // sheets stand a little behind the lines on them
  sheetInk.polygonOffset = true
  sheetInk.polygonOffsetFactor = 1
  sheetInk.polygonOffsetUnits = 2
  const sheets = new Mesh(new BufferGeometry(), sheetInk)
  const lines = new LineSegments(new BufferGeometry(), material(LINE_VERTEX, LINE_FRAGMENT))
  const rivets = new Points(new BufferGeometry(), material(RIVET_VERTEX, RIVET_FRAGMENT))
  const scene = new Scene()
  for (const each of [sheets, lines, rivets]) {
    each.frustumCulled = false
    scene.add(each)
  }
  /** What is not cut asks no pixel whether it lies before the cut, and what is hidden costs nothing. */
  const asCut = (isCut: boolean): void => {
    for (const { material: each } of [sheets, lines, rivets]) {
      if ('CUT' in each.defines === isCut) continue
      each.defines = isCut ? { CUT: 1 } : {}
      each.needsUpdate = true
    }
  }
  const camera = new OrthographicCamera(-1, 1, 1, -1, 0, 2 * DEEP)
  const spot = new WebGLRenderTarget(1, 1)
  const smooth = smoother(renderer)
  const size = { width: 1, height: 1, ratio: 1 }

  return {
    setSize: (width, height, ratio) => {
      Object.assign(size, { width, height, ratio })
      renderer.setPixelRatio(ratio)
      renderer.setSize(width, height, false)
      smooth.setSize(width * ratio, height * ratio)
    },
    load: (held, layers) => {
      const { nose, tail, reach, half, middle, rise } = held.body
      uniforms.uBody.value.set(nose, tail, middle)
      uniforms.uReach.value.set(reach, half, rise)
      replace(sheets, sheetsOf(held, layers))
      replace(lines, linesOf(held, layers))
      replace(rivets, rivetsOf(held, layers))
    },
    colour: (inks, of, hatch, gaps) => {
      of.forEach(({ ink, isNone, isChosen }, i) => {
        data.set([...ink.map((v) => Math.round(255 * v)), (isNone ? 128 : 0) + (isChosen ? 64 : 0)], 4 * i)
      })
      parts.needsUpdate = true
      uniforms.uHatch.value = hatch ? 1 : 0
      uniforms.uGaps.value = gaps ? 1 : 0
      for (const [uniform, ink] of [
        [uniforms.uInk, inks.ink],
        [uniforms.uFaint, inks.faint],
        [uniforms.uAccent, inks.accent],
        [uniforms.uSheet, inks.sheet],
        [uniforms.uShade, inks.shade],
      ] as const)
        uniform.value.set(...ink)
      inks.ramp.forEach((ink, i) => {
        uniforms.uRamp.value[i].set(...ink)
      })
    },
    draw: (at, apart, cut, isOnTheWay) => {
      look(camera, at, size.width, size.height)
      uniforms.uApart.value = apart
      uniforms.uEye.value.set(...axesOf(at).ahead).negate()
      // drawn apart, things keep their order by themselves
      uniforms.uStep.value = (LAYER * at.perPixel * Math.max(0, 1 - 8 * apart)) / DEEP
      if (cut) uniforms.uCut.value.set(...cut.normal, cut.at)
      asCut(cut !== null)
      return smooth.draw(scene, camera, isOnTheWay, (pixels) => {
        uniforms.uPixel.value = (pixels * at.perPixel) / size.ratio
        const isClosed = pixels > 1 && apart === 0 && cut === null && axesOf(at).ahead[2] < 0
        for (const { geometry } of [sheets, lines]) geometry.setDrawRange(0, isClosed ? outsideOf(geometry) : Number.POSITIVE_INFINITY)
      })
    },
    pick: (x, y) => {
      camera.setViewOffset(size.width, size.height, x - 0.5, y - 0.5, 1, 1)
      uniforms.uPick.value = 1
      for (const each of [lines, rivets]) each.visible = false
      sheets.geometry.setDrawRange(0, Number.POSITIVE_INFINITY)
      renderer.setRenderTarget(spot)
      renderer.clear()
      renderer.render(scene, camera)
      const seen = new Uint8Array(4)
      renderer.readRenderTargetPixels(spot, 0, 0, 1, 1, seen)
      renderer.setRenderTarget(null)
      for (const each of [lines, rivets]) each.visible = true
      uniforms.uPick.value = 0
      camera.clearViewOffset()
      const number = seen[0] + 256 * seen[1] - 1
      return number < 0 ? null : number
    },
    dispose: () => {
      for (const each of [sheets, lines, rivets]) {
        each.geometry.dispose()
        each.material.dispose()
      }
      parts.dispose()
      spot.dispose()
      smooth.dispose()
      renderer.dispose()
    },
  }
}

function rendererOn(canvas: HTMLCanvasElement): WebGLRenderer | null {
  // asked for first, since the renderer would complain on the console where there is none
  const context = canvas.getContext('webgl2', { antialias: false, alpha: true, premultipliedAlpha: true })
  return context && new WebGLRenderer({ canvas, context, alpha: true })
}

function look(camera: OrthographicCamera, at: Turned, width: number, height: number): void {
  const { ahead, right, up } = axesOf(at)
  const [w, h] = [(width * at.perPixel) / 2, (height * at.perPixel) / 2]
  Object.assign(camera, { left: -w, right: w, top: h, bottom: -h })
  camera.updateProjectionMatrix()
  const from = [0, 1, 2].map((i) => at.centre[i] - DEEP * ahead[i])
  camera.matrixAutoUpdate = false
  camera.matrix.copy(
    new Matrix4().set(
      ...([
        right[0],
        up[0],
        -ahead[0],
        from[0],
        right[1],
        up[1],
        -ahead[1],
        from[1],
        right[2],
        up[2],
        -ahead[2],
        from[2],
        0,
        0,
        0,
        1,
      ] as const),
    ),
  )
  camera.matrixWorldNeedsUpdate = true
}

function replace(thing: Mesh | LineSegments | Points, geometry: BufferGeometry): void {
  thing.geometry.dispose()
  thing.geometry = geometry
}
