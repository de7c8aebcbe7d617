/**
 * Sheets as flat tones with ink where they turn away from the eye and where they are cut; lines; rivets as small discs. One texel a
 * part says its colour and how it is marked, so that colouring and choosing move no geometry.
 */
const COMMON = /* glsl */ `
precision highp float;
precision highp int;
uniform highp sampler2D uParts;
uniform float uApart;
uniform vec3 uBody;
uniform vec3 uReach;
uniform vec3 uEye;
uniform float uStep;
// Layers lie a millimetre behind each other and a pixel is five: each is moved a few pixels' depth toward the middle of the body, and
// no way in the picture, so that what lies behind a sheet stays behind it.
vec4 inOrder(vec4 clip, vec3 place, float under) {
  // square to a box rounded about as a section is: near enough to tell its two sides apart
  vec3 share = vec3(min(place.x - uBody.x, 0.0) + max(place.x - uBody.y, 0.0), place.y, place.z - uBody.z) / uReach;
  vec3 outward = share * abs(share) / uReach;
  float side = dot(normalize(outward + 1e-5), uEye);
  // the more aslant a sheet is seen, the more it falls away in a pixel
  clip.z += under * uStep * clamp(8.0 * side, -1.0, 1.0) * (1.0 + 0.8 / max(abs(side), 0.1)) * clip.w;
  return clip;
}
vec4 partOf(float part) { return texelFetch(uParts, ivec2(int(part) & 511, int(part) >> 9), 0); }
`

/** What lies on the near side of the cut is not drawn. */
const CUT = /* glsl */ `
#ifdef CUT
uniform vec4 uCut;
float beforeCut(vec3 place) { return dot(uCut.xyz, place) - uCut.w; }
#endif
`

export const SHEET_VERTEX = /* glsl */ `${COMMON}
in vec3 aApart;
in float aPart;
in float aGap;
in float aUnder;
out vec3 vNormal;
out vec3 vPlace;
out float vGap;
flat out vec4 vPart;
flat out float vNumber;
void main() {
  vPart = partOf(aPart);
  vNumber = aPart;
  vNormal = normalMatrix * normal;
  vPlace = position;
  vGap = aGap;
  gl_Position = inOrder(projectionMatrix * modelViewMatrix * vec4(position + uApart * aApart, 1.0), position, aUnder);
}
`

export const SHEET_FRAGMENT = /* glsl */ `
precision highp float;
precision highp int;
${CUT}
uniform vec3 uInk;
uniform vec3 uAccent;
uniform vec3 uShade;
uniform vec3 uSheet;
uniform vec3 uRamp[3];
uniform float uGaps;
uniform float uPick;
uniform float uHatch;
in vec3 vNormal;
in vec3 vPlace;
in float vGap;
flat in vec4 vPart;
flat in float vNumber;
out vec4 colour;
vec3 ramp(float t) { return t < 0.5 ? mix(uRamp[0], uRamp[1], 2.0 * t) : mix(uRamp[1], uRamp[2], 2.0 * t - 1.0); }
void main() {
#ifdef CUT
  float before = beforeCut(vPlace);
  if (before > 0.0) discard;
#endif
  if (uPick > 0.5) {
    float n = vNumber + 1.0;
    colour = vec4(mod(n, 256.0) / 255.0, floor(n / 256.0) / 255.0, 0.0, 1.0);
    return;
  }
  vec3 n = normalize(vNormal);
  float facing = abs(n.z);
  // the side one sees is lit from over the left shoulder, gently: a wash, not a lamp
  float light = dot(n.z < 0.0 ? -n : n, normalize(vec3(-0.35, 0.75, 0.6)));
  float mark = floor(vPart.a * 255.0 + 0.5);
  bool isNone = mark >= 128.0;
  float chosen = mod(mark, 128.0) >= 64.0 ? 1.0 : 0.0;
  vec3 base = vPart.rgb;
  if (uGaps > 0.5) { isNone = vGap < 0.0; base = isNone ? uSheet : ramp(clamp(vGap, 0.0, 1.0)); }
  vec3 tone = mix(base * uShade, base, smoothstep(-0.25, 0.85, light));
  if (isNone && uHatch > 0.5 && mod(gl_FragCoord.x + gl_FragCoord.y, 8.0) < 1.0) tone = mix(tone, uInk, 0.14);
  // on a picture that is coloured already what is chosen is struck through instead
  if (uHatch < 0.5) tone = mix(tone, uAccent, 0.42 * chosen);
  else if (chosen > 0.5 && mod(gl_FragCoord.x - gl_FragCoord.y, 6.0) < 2.0) tone = mix(tone, uInk, 0.75);
  // ink where a rounded sheet turns out of sight: as wide as a line, however it is rounded
  float turn = fwidth(facing);
  float edge = turn > 1e-4 ? 1.0 - smoothstep(1.6, 3.2, facing / turn) : 0.0;
  tone = mix(tone, uInk, 0.85 * edge * step(facing, 0.5));
#ifdef CUT
  tone = mix(tone, uInk, 1.0 - smoothstep(1.0, 2.0, -before / max(fwidth(before), 1e-6)));
#endif
  colour = vec4(tone, 1.0);
}
`

export const LINE_VERTEX = /* glsl */ `${COMMON}
in vec3 aApart;
in float aPart;
in float aFaint;
in float aUnder;
out vec3 vPlace;
out float vFaint;
flat out vec4 vPart;
void main() {
  vPart = partOf(aPart);
  vPlace = position;
  vFaint = aFaint;
  gl_Position = inOrder(projectionMatrix * modelViewMatrix * vec4(position + uApart * aApart, 1.0), position, aUnder);
}
`

export const LINE_FRAGMENT = /* glsl */ `
precision highp float;
precision highp int;
${CUT}
uniform vec3 uInk;
uniform vec3 uFaint;
uniform vec3 uAccent;
in vec3 vPlace;
in float vFaint;
flat in vec4 vPart;
out vec4 colour;
void main() {
#ifdef CUT
  if (beforeCut(vPlace) > 0.0) discard;
#endif
  bool isChosen = mod(floor(vPart.a * 255.0 + 0.5), 128.0) >= 64.0;
  colour = vec4(isChosen ? uAccent : mix(uInk, uFaint, vFaint), 1.0);
}
`

/**
 * A disc on its sheet, never smaller than a dot that can be seen. One point each and its ellipse cut out of that: five times as fast
 * as a square each where the processor draws alone.
 */
export const RIVET_VERTEX = /* glsl */ `${COMMON}
uniform float uPixel;
in float aRadius;
in vec3 aApart;
in float aUnder;
out vec3 vPlace;
out vec3 vNormal;
out float vRadius;
void main() {
  vPlace = position;
  vNormal = normalMatrix * normal;
  vRadius = max(aRadius, 0.55 * uPixel);
  gl_PointSize = 2.0 * vRadius / uPixel;
  vec3 at = position + uApart * aApart + 0.0012 * normal;
  gl_Position = inOrder(projectionMatrix * modelViewMatrix * vec4(at, 1.0), position, aUnder);
}
`

export const RIVET_FRAGMENT = /* glsl */ `
precision highp float;
${CUT}
uniform vec3 uFaint;
uniform float uPixel;
uniform float uDeep;
in vec3 vPlace;
in vec3 vNormal;
in float vRadius;
out vec4 colour;
void main() {
#ifdef CUT
  if (beforeCut(vPlace) > 0.0) discard;
#endif
  gl_FragDepth = gl_FragCoord.z;
  // a dot of a pixel has no shape; a larger one is as round as it is seen, and leans with its sheet
  if (vRadius > uPixel) {
    vec2 on = vec2(2.0, -2.0) * (gl_PointCoord - 0.5);
    float rise = -dot(on, vNormal.xy) / (abs(vNormal.z) < 0.02 ? 0.02 : vNormal.z);
    if (dot(on, on) + rise * rise > 1.0) discard;
    gl_FragDepth -= rise * vRadius / uDeep;
  }
  colour = vec4(uFaint, 1.0);
}
`

/** The picture, smoothed, put on the page. */
export const PAGE_VERTEX = /* glsl */ `
out vec2 vOn;
void main() {
  vOn = position.xy * 0.5 + 0.5;
  gl_Position = vec4(position.xy, 0.0, 1.0);
}
`

export const PAGE_FRAGMENT = /* glsl */ `
precision highp float;
uniform sampler2D uPage;
in vec2 vOn;
out vec4 colour;
void main() {
  colour = texture(uPage, vOn);
}
`
