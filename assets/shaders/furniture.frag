// Everything on the bench that never changes by itself. u_rect gives the size in pixels, v_uv runs y down.
in vec2 v_px;
in vec2 v_uv;
out vec4 o_colour;
uniform vec4 u_rect;
uniform vec4 u_tune;        // meaning by kind
uniform vec3 u_tint;        // light of the day or the lamp
uniform sampler2D u_ink;
uniform vec2 u_ink_size;
uniform sampler2D u_print;
uniform vec2 u_print_mm;
uniform vec4 u_card_px;     // hand backdrop: the card
uniform float u_scale;      // hand backdrop: pixels a mm

vec3 wood(vec2 px, float seed, vec3 base) {
  vec2 g = vec2(px.x * 0.012, px.y * 0.22) + seed * 13.7;
  float rings = fbm(g + vec2(0.0, 2.0 * fbm(g * 0.7)));
  float fine = noise(vec2(px.x * 0.05, px.y * 1.9) + seed);
  return base * (0.72 + 0.48 * rings) * (0.94 + 0.10 * fine);
}
const vec3 k_beech = vec3(0.50, 0.31, 0.155);

vec4 wall(vec2 px) {
  vec2 tile = px / 46.0;
  vec2 f = abs(fract(tile) - 0.5);
  float joint = smoothstep(0.468, 0.490, max(f.x, f.y));
  float own = hash2(floor(tile));
  float fall = 1.0 - 0.30 * length((v_uv - vec2(0.35, 0.1)) * vec2(0.7, 1.0));
  vec3 c = vec3(0.655, 0.668, 0.650) * (0.97 + 0.04 * own) * fall;
  float bevel = smoothstep(0.40, 0.468, f.y) * sign(fract(tile.y) - 0.5);
  c *= 1.0 - 0.03 * bevel;
  return vec4(mix(c, c * 0.74, joint), 1.0);
}

vec4 top(vec2 px) {  // pale stone
  float far = v_uv.y;
  float speck = noise(px * 0.9) * 0.6 + noise(px * 0.23) * 0.4;
  float flake = smoothstep(0.90, 0.97, noise(px * 0.55 + 40.0));
  vec3 c = vec3(0.385, 0.380, 0.360) * (0.93 + 0.14 * speck) * (1.0 - 0.30 * flake);
  c *= 0.80 + 0.24 * exp(-pow((v_uv.x - 0.35) * 1.5, 2.0)) * (0.4 + 0.6 * far);
  c = mix(c, vec3(0.50, 0.51, 0.495), exp(-far * 6.0) * 0.55);   // the wall mirrored at a low angle
  c *= 1.0 - 0.45 * exp(-far * 90.0);
  return vec4(c, 1.0);
}

vec4 plank() {  // u_tune: seed, share of the height that is the upper face
  vec3 c = wood(v_px, u_tune.x, k_beech);
  float upper = smoothstep(u_tune.y + 0.03, u_tune.y - 0.03, v_uv.y);
  c *= mix(0.78, 1.25, upper);
  c *= mix(1.0, 0.70, smoothstep(0.75, 1.0, v_uv.y));
  float edge = smoothstep(0.0, 2.0, min(v_px.x - u_rect.x, u_rect.x + u_rect.z - v_px.x));
  return vec4(c * mix(0.6, 1.0, edge), 1.0);
}

vec4 bottle() {
  vec2 s = u_rect.zw;
  vec2 p = (v_uv - vec2(0.5, 0.5)) * s;         // px from the centre, y down
  float w = s.x;
  float h = s.y;
  float body = box(p - vec2(0.0, 0.16 * h), vec2(0.47 * w, 0.34 * h), 0.10 * w);
  float neck_y = -0.5 * h + 0.17 * h;
  float t = clamp((p.y - (-0.27 * h)) / (0.12 * h), 0.0, 1.0);
  float shoulder_r = mix(0.17 * w, 0.47 * w, t * t * (3.0 - 2.0 * t));
  float neck = max(abs(p.x) - shoulder_r, max(-0.36 * h - p.y, p.y - 0.1 * h));
  float cap = box(p - vec2(0.0, -0.42 * h), vec2(0.215 * w, 0.072 * h), 0.03 * w);
  float glass = min(body, neck);
  float cover = smoothstep(0.8, -0.8, min(glass, cap));
  if (cover <= 0.0) { return vec4(0.0); }
  float r = p.y < -0.15 * h ? shoulder_r : 0.47 * w;
  float q = clamp(p.x / r, -1.0, 1.0);
  float c1 = sqrt(1.0 - q * q);
  vec3 c = vec3(0.115, 0.040, 0.008) * (0.35 + 0.65 * c1);
  c += vec3(0.20, 0.085, 0.02) * exp(-pow((q - 0.45) / 0.35, 2.0)) * 0.5;   // light through the brown glass
  float full = smoothstep(-0.09 * h - 1.0, -0.09 * h + 1.0, p.y);
  c *= mix(1.35, 0.80, full);
  c += vec3(0.55) * (smoothstep(-0.76, -0.70, q) * smoothstep(-0.52, -0.60, q)) * 0.55;
  c += vec3(0.20) * smoothstep(0.86, 0.97, q) * 0.35;
  if (cap < 0.0) {
    float k = p.x / (0.215 * w);
    float ridge = 0.88 + 0.12 * sin(asin(clamp(k, -1.0, 1.0)) * 26.0);
    c = vec3(0.030, 0.032, 0.036) * (0.5 + 0.8 * sqrt(max(0.0, 1.0 - k * k))) * ridge + vec3(0.16) * exp(-pow((k + 0.45) * 5.0, 2.0));
  }
  return vec4(c, 1.0) * cover;
}

vec4 swatch() {  // u_tune: linear light of a field, and how dark its edge is
  float inside = min(min(v_px.x - u_rect.x, u_rect.x + u_rect.z - v_px.x), min(v_px.y - u_rect.y, u_rect.y + u_rect.w - v_px.y));
  return vec4(u_tune.rgb * mix(1.0 - u_tune.w, 1.0, smoothstep(0.2, 1.4, inside)), 1.0);
}

vec4 shadow() {
  vec2 p = v_uv * 2.0 - 1.0;
  float d = length(p);
  return vec4(0.0, 0.0, 0.0, u_tune.x * smoothstep(1.0, 0.15, d));
}

vec3 print_at(vec2 mm, float scale) {
  float texel = float(textureSize(u_print, 0).x) / u_print_mm.x;
  vec2 uv = vec2(mm.x / u_print_mm.x + 0.5, mm.y / u_print_mm.y);
  return vec3(mix(0.035, 1.0, textureLod(u_print, uv, log2(max(1.0, 0.8 * texel / scale))).r));
}

vec4 small_card() {  // u_tune.x: which card
  vec2 s = u_rect.zw;
  vec2 p = (v_uv - 0.5) * s;
  float sheet = box(p - vec2(0.0, -0.045 * s.y), vec2(0.5 * s.x, 0.455 * s.y) - 1.0, 2.0);
  float foot = box(p - vec2(0.0, 0.45 * s.y), vec2(0.40 * s.x, 0.05 * s.y), 2.0);
  float cover = smoothstep(0.7, -0.7, min(sheet, foot));
  vec3 c = vec3(0.86, 0.86, 0.84);
  if (u_tune.x > 1.5) { c = 0.86 * print_at(vec2(p.x, p.y + 0.5 * s.y) / 2.4, 2.4); }
  else if (u_tune.x > 0.5) { c = vec3(0.012); }
  c *= 1.0 - 0.10 * v_uv.y;
  if (foot < 0.0) { c = wood(v_px, 4.0, k_beech) * 0.9; }
  return vec4(c, 1.0) * cover;
}

vec3 metal(float q) {
  float c = sqrt(max(0.0, 1.0 - q * q));
  float sky = 0.20 + 0.55 * exp(-pow((q + 0.45) / 0.20, 2.0)) + 0.20 * exp(-pow((q - 0.55) / 0.16, 2.0));
  return vec3(0.62, 0.60, 0.56) * sky * (0.35 + 0.65 * c);
}

vec4 burner() {
  vec2 s = u_rect.zw;
  vec2 p = vec2((v_uv.x - 0.5) * s.x, (1.0 - v_uv.y) * s.y);   // y up from the bench
  float h = s.y;
  float barrel_r = 0.052 * h;
  float barrel = box(p - vec2(0.0, 0.61 * h), vec2(barrel_r, 0.39 * h), 1.0);
  float lip = box(p - vec2(0.0, 0.975 * h), vec2(barrel_r * 1.18, 0.022 * h), 1.5);
  float collar = box(p - vec2(0.0, 0.30 * h), vec2(barrel_r * 1.45, 0.062 * h), 2.0);
  float base_r = 0.17 * h;
  float t = clamp(p.y / (0.22 * h), 0.0, 1.0);
  float base = max(abs(p.x) - mix(base_r, barrel_r * 1.3, pow(t, 0.45)), p.y - 0.22 * h);
  float hose = max(abs(p.y - 0.12 * h - 6.0 * sin(p.x * 0.045)) - 0.026 * h, -p.x);
  vec3 c = vec3(0.0);
  float d = 1e3;
  if (hose < 0.8) { d = hose; float q = (p.y - 0.12 * h - 6.0 * sin(p.x * 0.045)) / (0.026 * h); c = vec3(0.16, 0.035, 0.022) * (0.35 + 0.75 * max(0.0, q * 0.5 + 0.5)); }
  if (base < 0.8) { d = min(d, base); c = vec3(0.028, 0.034, 0.042) * (1.0 + 1.5 * exp(-pow(p.x / base_r + 0.35, 2.0) * 18.0)) + vec3(0.05) * smoothstep(0.02 * h, 0.05 * h, p.y) * (1.0 - t); }
  if (barrel < 0.8) { d = min(d, barrel); c = metal(p.x / barrel_r) * vec3(1.0, 0.93, 0.80); c *= 1.0 - 0.45 * smoothstep(0.75, 1.0, p.y / h); }
  if (lip < 0.8) { d = min(d, lip); c = metal(p.x / (barrel_r * 1.18)) * 0.55; }
  if (collar < 0.8) {
    d = min(d, collar);
    c = metal(p.x / (barrel_r * 1.45)) * vec3(1.0, 0.86, 0.58);
    float hole = length((p - vec2(0.01 * h, 0.30 * h)) / vec2(1.0, 1.2)) - 0.030 * h;
    c = mix(c, vec3(0.012), smoothstep(0.8, -0.8, hole));
  }
  return vec4(c, 1.0) * smoothstep(0.8, -0.8, d);
}

// Beaker on its hot plate. u_tune: 0 behind the tubes, 1 before them; y: water is hot.
vec4 bath() {
  vec2 s = u_rect.zw;
  vec2 p = vec2((v_uv.x - 0.5) * s.x, (1.0 - v_uv.y) * s.y);
  float plate_h = 0.085 * s.y;
  float plate = box(p - vec2(0.0, plate_h * 0.5), vec2(0.5 * s.x, plate_h * 0.5), 3.0);
  float r = 0.46 * s.x;
  float g = box(p - vec2(0.0, 0.5 * (s.y + plate_h)), vec2(r, 0.5 * (s.y - plate_h) - 1.0), 7.0);
  float q = clamp(p.x / r, -1.0, 1.0);
  float level = plate_h + 0.66 * (s.y - plate_h);
  float in_glass = smoothstep(0.8, -0.8, g);
  float water = smoothstep(level + 0.8, level - 0.8, p.y) * in_glass;
  float edge = fresnel(sqrt(max(0.0, 1.0 - q * q * 0.998)), 1.5);
  if (u_tune.x < 0.5) {
    float c_plate = smoothstep(0.8, -0.8, plate);
    vec3 c = vec3(0.38, 0.39, 0.39) * (0.75 + 0.25 * (1.0 - v_uv.y)) * (p.y > plate_h * 0.72 ? 0.25 : 1.0);
    float knob = length((p - vec2(0.36 * s.x, plate_h * 0.36)) ) - plate_h * 0.22;
    c = mix(c, vec3(0.03), smoothstep(0.8, -0.8, knob));
    vec4 out_c = vec4(c, 1.0) * c_plate;
    vec4 w = vec4(vec3(0.34, 0.40, 0.40) * 0.22, 0.22) * water;
    vec4 wall_c = vec4(vec3(0.42) * 0.14, 0.14) * in_glass;
    w = w + wall_c * (1.0 - w.a);
    return w + out_c * (1.0 - w.a);
  }
  float surface = exp(-pow((p.y - level - 1.5 * q * q) / 1.2, 2.0)) * in_glass;
  float rim = exp(-pow((p.y - (s.y - 2.5)) / 1.6, 2.0)) * smoothstep(1.5, 0.0, abs(q) - 1.0);
  float shine = smoothstep(-0.80, -0.76, q) * smoothstep(-0.62, -0.66, q) * smoothstep(plate_h + 8.0, plate_h + 20.0, p.y) * in_glass;
  float marks = 0.0;
  for (int i = 1; i < 5; ++i) {
    float y = plate_h + float(i) * 0.16 * s.y;
    marks += smoothstep(1.0, 0.4, abs(p.y - y)) * step(0.30, q) * step(q, i == 2 || i == 4 ? 0.58 : 0.46);
  }
  float wall_line = smoothstep(0.965, 0.99, abs(q)) * in_glass;
  float a = clamp(0.38 * surface + 0.45 * edge * in_glass + 0.40 * rim + 0.45 * wall_line, 0.0, 0.85);
  vec3 c = vec3(0.20, 0.22, 0.22) * a + vec3(0.42) * shine * 0.6 + vec3(0.45) * marks * 0.5 * in_glass + vec3(0.5) * rim * 0.5;
  return vec4(c, a);
}

vec4 thermometer() {  // u_tune.x: share of the stem the thread has risen
  vec2 s = u_rect.zw;
  vec2 p = vec2((v_uv.x - 0.5) * s.x, (1.0 - v_uv.y) * s.y);
  float r = max(0.5 * s.x, 1.5);
  float stem = box(p - vec2(0.0, 0.5 * s.y), vec2(r, 0.5 * s.y), r);
  float q = p.x / r;
  vec3 c = vec3(0.62, 0.63, 0.60) * (0.55 + 0.45 * sqrt(max(0.0, 1.0 - q * q)));
  float top_y = (0.10 + 0.84 * u_tune.x) * s.y;
  c = mix(c, vec3(0.45, 0.02, 0.02), smoothstep(0.42, 0.28, abs(q)) * smoothstep(top_y + 0.6, top_y - 0.6, p.y));
  if (p.y < 0.06 * s.y) { c = vec3(0.40, 0.02, 0.02); }
  float tick = smoothstep(0.3, 0.15, abs(fract(p.y / s.y * 24.0) - 0.5)) * step(0.1, q) * step(0.12 * s.y, p.y);
  c *= 1.0 - 0.5 * tick;
  return vec4(c, 1.0) * 0.92 * smoothstep(0.7, -0.7, stem);
}

vec4 paper() {  // u_tune.x: 1 wraps a round body
  float q = v_uv.x * 2.0 - 1.0;
  float edge = box((v_uv - 0.5) * u_rect.zw, 0.5 * u_rect.zw - 0.5, 2.0);
  float lit = u_tune.x > 0.5 ? 0.60 + 0.40 * sqrt(max(0.0, 1.0 - q * q * 0.75)) : 0.95;
  vec3 c = vec3(0.80, 0.78, 0.71) * lit * (0.97 + 0.05 * noise(v_px * 0.6));
  float ink = texelFetch(u_ink, ivec2(clamp(v_px, vec2(0.0), u_ink_size - 1.0)), 0).r;
  c = mix(vec3(0.018, 0.020, 0.045), c, ink);
  return vec4(c, 1.0) * smoothstep(0.7, -0.7, edge);
}

vec4 inked() {  // words straight on what is beneath
  float ink = texelFetch(u_ink, ivec2(clamp(v_px, vec2(0.0), u_ink_size - 1.0)), 0).r;
  return vec4(vec3(0.02, 0.012, 0.006) * (1.0 - ink), 1.0 - ink);
}

vec4 lamp() {  // u_tune.x: lit
  vec2 s = u_rect.zw;
  vec2 p = (v_uv - 0.5) * s;
  float arm = abs(p.x - 0.10 * s.x - (p.y + 0.5 * s.y) * 0.10) - 2.0;
  arm = max(arm, p.y - 0.02 * s.y);
  float t = (p.y - (-0.02 * s.y)) / (0.34 * s.y);
  float shade = max(abs(p.x - 0.10 * s.x) - mix(0.12, 0.40, clamp(t, 0.0, 1.0)) * s.x, max(-t, t - 1.0) * 20.0);
  float bulb = length((p - vec2(0.10 * s.x, 0.33 * s.y)) / vec2(0.30 * s.x, 0.06 * s.y)) - 1.0;
  vec3 c = vec3(0.0);
  float a = 0.0;
  if (arm < 0.8) { a = smoothstep(0.8, -0.8, arm); c = vec3(0.10); }
  if (bulb < 0.1) { a = 1.0; c = mix(vec3(0.25), vec3(2.0, 1.5, 0.9), u_tune.x); }
  if (shade < 0.8) { float k = smoothstep(0.8, -0.8, shade); float q = (p.x - 0.10 * s.x) / (0.40 * s.x); c = mix(c, vec3(0.020, 0.075, 0.060) * (0.7 + 1.6 * exp(-pow((q + 0.3) * 3.0, 2.0))), k); a = max(a, k); }
  float glow = u_tune.x * 0.25 * exp(-dot(p - vec2(0.10 * s.x, 0.38 * s.y), p - vec2(0.10 * s.x, 0.38 * s.y)) / (s.x * s.x * 0.10));
  vec4 o = vec4(c * a, a);
  o.rgb += vec3(1.0, 0.75, 0.42) * glow * (1.0 - a);
  return o;
}

vec4 backdrop() {  // the room out of focus, and the card held behind the glass
  float y = v_uv.y;
  float wall_part = smoothstep(0.86, 0.60, y);
  vec3 c = mix(vec3(0.085, 0.090, 0.092), vec3(0.330, 0.340, 0.330), wall_part);
  c += vec3(0.16, 0.10, 0.05) * exp(-pow((y - 0.66) / 0.05, 2.0)) * 0.6;
  c *= 0.85 + 0.25 * noise(v_uv * vec2(2.2, 3.0) + 3.0);
  c *= u_tint;
  vec2 half_px = 0.5 * u_card_px.zw;
  vec2 centre = u_card_px.xy + half_px;
  float drop = box(v_px - centre - vec2(5.0, 8.0), half_px, 4.0);
  c *= mix(0.45, 1.0, smoothstep(-8.0, 22.0, drop));
  float sheet = box(v_px - centre, half_px, 3.0);
  vec3 card = vec3(1.0);
  if (u_tune.x > 1.5 && v_px.y < u_tune.y) { card = print_at(vec2(v_px.x - centre.x, v_px.y - u_card_px.y) / u_scale, u_scale); }
  else if (u_tune.x > 0.5 && u_tune.x < 1.5) { card = vec3(0.004); }
  return vec4(mix(c, card, smoothstep(0.6, -0.6, sheet)), 1.0);
}

vec4 lid() {
  vec2 s = u_rect.zw;
  vec2 p = (v_uv - 0.5) * s;
  float d = box(p, 0.5 * s - 0.5, 3.0);
  float q = p.x / (0.5 * s.x);
  float ridge = 0.92 + 0.10 * sin(asin(clamp(q, -1.0, 1.0)) * 40.0);
  vec3 c = vec3(0.50, 0.30, 0.045) * (0.45 + 0.6 * sqrt(max(0.0, 1.0 - q * q))) * ridge;
  c *= mix(1.2, 0.9, v_uv.y);
  return vec4(c, 1.0) * smoothstep(0.7, -0.7, d);
}

vec4 mark() {  // a soft light round what the pointer is on
  vec2 s = u_rect.zw;
  float d = box((v_uv - 0.5) * s, 0.5 * s - 7.0, 6.0);
  float ring = exp(-pow((d - 1.0) / 2.2, 2.0));
  return vec4(vec3(0.75, 0.68, 0.42) * ring * 0.55, ring * 0.25);
}

vec4 hole() {
  vec2 p = v_uv * 2.0 - 1.0;
  float d = length(p);
  vec3 c = mix(vec3(0.030, 0.018, 0.010), vec3(0.14, 0.085, 0.045), smoothstep(-0.2, 1.0, p.y));
  return vec4(c, 1.0) * smoothstep(1.0, 0.86, d);
}

void main() {
  // One thing a program: KIND is its number, for software drivers run both sides of every branch.
#if KIND == 12
  o_colour = backdrop();
#else
  vec4 c = vec4(0.0);
#if KIND == 0
  c = wall(v_px);
#endif
#if KIND == 1
  c = top(v_px);
#endif
#if KIND == 2
  c = plank();
#endif
#if KIND == 3
  c = bottle();
#endif
#if KIND == 4
  c = shadow();
#endif
#if KIND == 5
  c = small_card();
#endif
#if KIND == 6
  c = burner();
#endif
#if KIND == 7
  c = bath();
#endif
#if KIND == 8
  c = thermometer();
#endif
#if KIND == 9
  c = paper();
#endif
#if KIND == 10
  c = inked();
#endif
#if KIND == 11
  c = lamp();
#endif
#if KIND == 13
  c = lid();
#endif
#if KIND == 14
  c = mark();
#endif
#if KIND == 15
  c = hole();
#endif
#if KIND == 16
  o_colour = swatch();  // Already as the eye sees it under the lamp.
#else
  o_colour = vec4(c.rgb * u_tint, c.a);
#endif
#endif
}
