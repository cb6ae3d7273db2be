uniform vec4 u_rect;    // x, y, w, h in pixels, y down
uniform vec2 u_target;  // pixels
out vec2 v_px;
out vec2 v_uv;
void main() {
  v_uv = vec2(gl_VertexID & 1, gl_VertexID >> 1);
  v_px = u_rect.xy + v_uv * u_rect.zw;
  gl_Position = vec4(2.0 * v_px.x / u_target.x - 1.0, 1.0 - 2.0 * v_px.y / u_target.y, 0.0, 1.0);
}
