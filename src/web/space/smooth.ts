/**
 * Smooth edges, where the machine has the time for them: always at rest, and on the way where a frame takes no longer than a fast eye
 * needs. Where the processor draws alone what is on the way has half as many pixels each way, which takes a fifth of the time.
 */
import {
  BufferAttribute,
  BufferGeometry,
  type Camera,
  GLSL3,
  Mesh,
  Scene,
  ShaderMaterial,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three'
import { PAGE_FRAGMENT, PAGE_VERTEX } from './shaders.js'

export interface Smoother {
  /** in pixels of the screen */
  readonly setSize: (width: number, height: number) => void
  /** whether it was drawn roughly; `grain` is told how many pixels of the screen one of the picture is */
  readonly draw: (scene: Scene, camera: Camera, isOnTheWay: boolean, grain: (pixels: number) => void) => boolean
  readonly dispose: () => void
}

/** ms; a smooth frame that takes longer is one for the rest */
const FAST = 30
/** The first frame makes the programs ready, and says nothing of the next. */
const MEASURED = 2
/** Pixels of the screen that one of a rough picture is wide. */
const ROUGH = 2

export function smoother(renderer: WebGLRenderer): Smoother {
  const target = new WebGLRenderTarget(1, 1, { samples: 4 })
  const rough = new WebGLRenderTarget(1, 1)
  const ink = new ShaderMaterial({
    glslVersion: GLSL3,
    uniforms: { uPage: { value: target.texture } },
    vertexShader: PAGE_VERTEX,
    fragmentShader: PAGE_FRAGMENT,
    depthTest: false,
    depthWrite: false,
  })
  const corners = new BufferGeometry()
  // one triangle that is larger than the page
  corners.setAttribute('position', new BufferAttribute(Float32Array.of(-1, -1, 0, 3, -1, 0, -1, 3, 0), 3))
  const sheet = new Mesh(corners, ink)
  sheet.frustumCulled = false
  const page = new Scene()
  page.add(sheet)
  const spot = new Uint8Array(4)
  let drawn = 0
  let isSlow = false

  const through = (on: WebGLRenderTarget, scene: Scene, camera: Camera): void => {
    renderer.setRenderTarget(on)
    renderer.clear()
    renderer.render(scene, camera)
    renderer.setRenderTarget(null)
    ink.uniforms.uPage.value = on.texture
    renderer.render(page, camera)
  }
  return {
    setSize: (width, height) => {
      target.setSize(Math.max(1, Math.round(width)), Math.max(1, Math.round(height)))
      rough.setSize(Math.max(1, Math.round(width / ROUGH)), Math.max(1, Math.round(height / ROUGH)))
    },
    draw: (scene, camera, isOnTheWay, grain) => {
      if (isSlow && isOnTheWay) {
        grain(ROUGH)
        through(rough, scene, camera)
        return true
      }
      const start = performance.now()
      grain(1)
      through(target, scene, camera)
      drawn++
      if (drawn === MEASURED) {
        // a pixel is only known when the frame is done
        renderer.readRenderTargetPixels(target, 0, 0, 1, 1, spot)
        isSlow = performance.now() - start > FAST
      }
      return false
    },
    dispose: () => {
      target.dispose()
      rough.dispose()
      ink.dispose()
      corners.dispose()
    },
  }
}
