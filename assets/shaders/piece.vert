layout(location = 0) in vec4 a_place;   // x, height, wide, tall in mm
layout(location = 1) in vec4 a_colour;  // linear rgb, opacity
layout(location = 2) in vec4 a_kind;    // kind, seed, veil, spare
uniform vec2 u_target;
uniform vec2 u_foot;
uniform float u_scale;
out vec2 v_at;      // -1..1 across the piece, y up
out float v_px_size;
flat out vec4 v_colour;
flat out vec4 v_kind;
void main() {
  vec2 corner = vec2(gl_VertexID & 1, gl_VertexID >> 1) * 2.0 - 1.0;
  vec2 half_px = max(0.5 * a_place.zw * u_scale, vec2(1e-3));
  // Less than a pixel across: a pixel that stops proportionately less light.
  vec2 drawn = max(half_px * 1.35, vec2(0.8));
  float thin = min(1.0, half_px.x * half_px.y / (0.6 * 0.6));
  v_at = corner * drawn / max(half_px, vec2(0.6));
  v_px_size = 2.0 / max(half_px.y, 0.6);
  vec2 px = u_foot + vec2(a_place.x, -a_place.y) * u_scale + vec2(corner.x, -corner.y) * drawn;
  v_colour = vec4(a_colour.rgb, a_colour.a * thin);
  v_kind = a_kind;
  gl_Position = vec4(2.0 * px.x / u_target.x - 1.0, 1.0 - 2.0 * px.y / u_target.y, 0.0, 1.0);
}
