// The urinometer's float: stem with its paper scale, bulb and shot, partly under the liquid of the jar.
in vec2 v_px;
out vec4 o_colour;
uniform vec2 u_foot;
uniform float u_scale;
uniform float u_axis;        // mm, sideways lean as seen
uniform float u_one_mm;      // height of the 1.000 line above the jar's bottom
uniform float u_stem_r, u_bulb_r, u_bulb_len, u_scale_len, u_margin;
uniform float u_level, u_climb, u_wide;   // surface; rise of liquid on the stem; sideways magnification below the surface
uniform sampler2D u_paper;
uniform sampler2D u_rows;
uniform int u_row_count;
uniform float u_pitch;
uniform vec3 u_room;
uniform vec3 u_window;
void main() {
  vec2 p = vec2(v_px.x - u_foot.x, u_foot.y - v_px.y) / u_scale;
  p.x -= u_axis;
  bool under = p.y < u_level;
  float x = under ? p.x / u_wide : p.x;
  float aa = 0.7 / u_scale / (under ? u_wide : 1.0);
  float stem_top = u_one_mm + u_margin + 6.0;
  float stem_low = u_one_mm - u_scale_len - u_margin;
  float neck = 6.0;
  float bulb_low = stem_low - neck - u_bulb_len;
  // Profile radius at this height.
  float r = 0.0;
  if (p.y > stem_low) {
    float cap = clamp((stem_top - p.y) / u_stem_r, 0.0, 1.0);
    r = u_stem_r * sqrt(max(0.0, 1.0 - (1.0 - cap) * (1.0 - cap)));
  } else if (p.y > stem_low - neck) {
    float t = (stem_low - p.y) / neck;
    r = mix(u_stem_r, u_bulb_r, t * t * (3.0 - 2.0 * t));
  } else if (p.y > bulb_low) {
    float t = (p.y - bulb_low) / u_bulb_len;
    float body = smoothstep(0.30, 0.46, t);
    float ballast = sqrt(max(0.0, 1.0 - pow((t - 0.15) / 0.155, 2.0))) * 0.62;
    r = u_bulb_r * max(mix(0.28, 1.0, body) * step(0.2, t), ballast);
  }
  if (r <= 0.0) { discard; }
  float cover = smoothstep(aa, -aa, abs(x) - r);
  if (cover <= 0.0) { discard; }
  float q = clamp(x / r, -1.0, 1.0);
  float round_light = 0.62 + 0.38 * sqrt(1.0 - q * q);
  vec3 colour = u_room * 0.55;
  float alpha = 0.30 + 0.5 * smoothstep(0.80, 1.0, abs(q));
  float paper_top = u_one_mm + u_margin;
  if (p.y < paper_top && p.y > stem_low + 0.2 && abs(q) < 0.93) {
    vec2 uv = vec2(asin(clamp(q / 0.93, -1.0, 1.0)) / 3.14159265 + 0.5, (paper_top - p.y) / (u_scale_len + 2.0 * u_margin));
    float texel = float(textureSize(u_paper, 0).y) / (u_scale_len + 2.0 * u_margin);
    float ink = textureLod(u_paper, uv, max(0.0, log2(texel / u_scale) - 0.4)).r;
    colour = mix(vec3(0.02, 0.02, 0.03), vec3(0.93, 0.91, 0.84), ink) * round_light;
    alpha = 1.0;
  } else if (p.y < bulb_low + 0.31 * u_bulb_len) {
    vec2 c = cells(vec2(asin(q) * r, p.y) * 0.9);
    colour = vec3(0.14, 0.14, 0.15) * (1.25 - c.x) * round_light + u_room * 0.10 * smoothstep(0.3, 0.1, c.x);
    alpha = 1.0;
  }
  colour += u_window * 0.03 * exp(-pow((q + 0.62) * 8.0, 2.0));  // faint: the figures must stay plain
  if (under && u_row_count > 0) {
    int row = clamp(int(p.y / u_pitch), 0, u_row_count - 1);
    vec3 white = texelFetch(u_rows, ivec2(0, row), 0).rgb;
    vec3 black = texelFetch(u_rows, ivec2(8, row), 0).rgb;
    float k = texelFetch(u_rows, ivec2(16, row), 0).r;
    // Half the way through the liquid: half the colour, half the haze.
    vec3 tint = sqrt(max(white, vec3(0.0)));
    colour = mix(tint * tint, colour * tint, sqrt(clamp(k, 0.0, 1.0)));
    alpha *= mix(0.25, 1.0, sqrt(clamp(k, 0.0, 1.0)));
  }
  // Liquid climbing the stem, and the line where the surface cuts it.
  float up = p.y - u_level;
  if (up >= 0.0 && up < u_climb && p.y > stem_low) {
    float edge = smoothstep(u_climb, u_climb * 0.2, up);
    colour *= mix(0.92, 0.70, edge);
    alpha = max(alpha, 0.6);
  }
  o_colour = vec4(colour * alpha, alpha) * cover;
}
