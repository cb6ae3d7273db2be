// A glass vessel with what is in it, in millimetres from its axis and its inside bottom. Software drivers run both sides of
// every branch, so what a band of the vessel has in it is chosen when the shader is compiled:
// PASS 0 what is seen through the glass, 1 the light on it, 2 both; CARD 0 plain, 2 printed, 3 whatever stands behind;
// PART 0 dry, 1 the surface, 2 under it; ROUND, CLOT, BED, HOT (foam, steam, boiling) 0 or 1.
in vec2 v_px;
out vec4 o_colour;
uniform vec2 u_target;
uniform vec2 u_foot;       // pixel of the inside bottom on the axis
uniform float u_scale;     // pixels a mm
uniform float u_inner, u_outer, u_height, u_level, u_rise, u_tilt;
uniform sampler2D u_rows;
uniform int u_row_count;
uniform float u_pitch;
uniform int u_black;       // the plain card is the black one
uniform vec4 u_card_mm;    // left, bottom, right, top of the card
uniform float u_card_far;  // distance behind the axis
uniform sampler2D u_print;
uniform vec2 u_print_mm;
uniform sampler2D u_scene;
uniform vec3 u_room;       // light of the room beside the card
uniform vec3 u_window;     // colour of the window or lamp seen in the glass
uniform vec4 u_bed;        // sediment: colour, height
uniform float u_bed_rough;
uniform vec4 u_clot;       // colour, share
uniform vec2 u_clot_mm;
uniform float u_blank;      // the print ends this high above the inside bottom; below, the card is bare
uniform float u_foam, u_boil, u_steam, u_time, u_seed;

const float k_black_card = 0.004;  // black flock paper
const float k_ink = 0.035;         // printer's ink

vec3 behind(vec2 at, float blur_mm, out bool on_card) {
#if CARD == 3
  vec2 px = u_foot + vec2(at.x, -at.y) * u_scale;
  px = clamp(px, vec2(1.0), u_target - 2.0);
  on_card = false;
  return texelFetch(u_scene, ivec2(px.x, u_target.y - px.y), 0).rgb;
#else
  on_card = at.x > u_card_mm.x && at.x < u_card_mm.z && at.y > u_card_mm.y && at.y < u_card_mm.w;
  vec3 card = vec3(1.0);
#if CARD == 2
  float reach = 0.05 + blur_mm;  // the end of the print is as soft as its letters
  if (at.y >= u_blank - reach) {
    vec2 uv = vec2(at.x / u_print_mm.x + 0.5, (u_card_mm.w - at.y) / u_print_mm.y);
    float px_size = float(textureSize(u_print, 0).x) / u_print_mm.x;
    float lod = log2(max(1.0, px_size * max(2.0 * blur_mm, 0.8 / u_scale)));
    float ink = smoothstep(u_blank - reach, u_blank + reach, at.y) * (1.0 - textureLod(u_print, uv, lod).r);
    card = vec3(mix(1.0, k_ink, ink));
  }
#else
  card = vec3(u_black == 1 ? k_black_card : 1.0);
#endif
  return on_card ? card : u_room;
#endif
}

// How far a ray at offset r turns; q 1 at the rim. `inside` is the index of what fills the glass.
float turn(float r, float outer, float inner, float inside) {
  float q = min(r / outer, 0.9995);
  float t = 2.0 * (asin(q) - asin(q / 1.5));
  float g = r / 1.5 / inner;
  if (g < 1.0) {
    float s = r / (inside * inner);
    t += s < 1.0 ? 2.0 * (asin(g) - asin(s)) : 2.0 * asin(g) - 3.14159265;
  }
  return t;
}

// Where the chord through p meets the card.
vec2 chord(vec2 p, float inside) {
  vec2 from = vec2(p.x, (ROUND == 1 && p.y < u_inner) ? p.y - u_inner : 0.0);
  float r = length(from);
  if (r < 1e-4) { return p; }
  float t = turn(r, u_outer, u_inner, inside);
  if (abs(t) > 1.5) { return vec2(sign(p.x) * 1e3, p.y); }
  float landed = (r - u_card_far * sin(t)) / cos(t);
  return vec2(0.0, p.y - from.y) + from * (landed / r);
}

float half_width(float h, float radius) {  // of the glass profile at height h
  if (ROUND == 0 || h >= u_inner) { return radius; }
  float below = u_inner - h;
  return sqrt(max(0.0, radius * radius - below * below));
}

void sample_rows(float u, float h, out vec3 white, out vec3 black, out vec3 extra) {
  int row = clamp(int(h / u_pitch), 0, u_row_count - 1);
  float s = clamp(u * 8.0 - 0.5, 0.0, 7.0);
  int a = int(s);
  int b = min(a + 1, 7);
  float f = s - float(a);
  white = mix(texelFetch(u_rows, ivec2(a, row), 0).rgb, texelFetch(u_rows, ivec2(b, row), 0).rgb, f);
  black = mix(texelFetch(u_rows, ivec2(8 + a, row), 0).rgb, texelFetch(u_rows, ivec2(8 + b, row), 0).rgb, f);
  extra = texelFetch(u_rows, ivec2(16, row), 0).rgb;
}

#if PART != 0
vec3 liquid(vec2 p, float h, float u) {
  vec3 white, black, extra;
  sample_rows(u, h, white, black, extra);
#if CARD == 0
  return u_black == 1 ? black : white;
#else
  bool on_card;
#if CARD == 3
  vec3 card = behind(chord(p, 1.333), extra.y, on_card);
  return black * u_room + max(white - black, 0.0) * card;
#else
  // How much of the print arrives, sharp and spread, are the model's numbers; the card only says where ink is.
  vec3 edges = behind(chord(p, 1.333), 0.0, on_card);
  vec3 spread = behind(chord(p, 1.333), extra.y, on_card);
  if (!on_card) { return black + max(white - black, 0.0) * edges; }
  return max(white * (1.0 - extra.x * (1.0 - edges) - extra.z * (1.0 - spread)), black);
#endif
#endif
}
#endif

// A continuous curd: soft lumps of all sizes pressed together, here and there a crack where liquid shows, lit from the
// upper left.
float curd_height(vec2 w, float lump) {
  vec2 bent = w / lump + 1.1 * vec2(fbm(w / lump * 0.9 + u_seed), fbm(w / lump * 0.9 + 31.0 + u_seed));
  vec2 big = cells(bent * 0.8);
  vec2 small = cells(bent * 2.3 + 7.0);
  return 0.55 * sqrt(max(0.0, 1.0 - big.x * big.x)) + 0.22 * (1.0 - small.x) + 0.35 * fbm(w * 3.1 / lump);
}
vec4 curd(vec2 w, float lump) {
  float d = 0.10 * lump;
  float lit = 0.90 + 1.15 * (curd_height(w, lump) - curd_height(w + vec2(-d, d), lump));
  vec2 bent = w / lump + 1.1 * vec2(fbm(w / lump * 0.9 + u_seed), fbm(w / lump * 0.9 + 31.0 + u_seed));
  vec2 c = cells(bent * 0.8);
  float open = smoothstep(0.50, 0.72, fbm(w / lump * 0.45 + 5.0 + u_seed));
  float crack = smoothstep(0.0, mix(0.05, 0.24, open), c.y - c.x);
  return vec4(vec3(clamp(lit, 0.55, 1.06) * mix(0.80, 1.0, crack)), mix(mix(0.85, 0.25, open), 1.0, crack));
}

vec3 glass_only(vec2 p) {
  bool on_card;
  vec3 seen = behind(chord(p, 1.0), 0.0, on_card);
  vec2 from = vec2(p.x, (ROUND == 1 && p.y < u_inner) ? p.y - u_inner : 0.0);
  float r = length(from);
  float s = r / u_inner;
  float through = 1.0;
  if (s < 1.0) {  // two crossings of the inner wall
    float f = fresnel(sqrt(1.0 - s * s), 1.5);
    through = (1.0 - f) * (1.0 - f);
  } else {
    through = 0.72;
  }
  return seen * through + u_room * 0.30 * (1.0 - through);
}

// What the glass throws back: a window of two panes to the left, a faint one from the far wall, the mouth's ring.
vec3 shine(vec2 p, float outer, float q, float back, float rim, float lip, float aa) {
  float u = p.x / max(outer, 1e-3);
  float tall = smoothstep(0.0, 0.05, (p.y - u_inner * 0.55) / u_height) * smoothstep(0.0, 0.03, (u_height * 0.985 - p.y) / u_height);
  float pane = smoothstep(-0.70, -0.67, u) * smoothstep(-0.50, -0.54, u);
  pane *= 1.0 - 0.75 * smoothstep(0.012, 0.006, abs(u + 0.60));
  float far_pane = smoothstep(0.60, 0.66, u) * smoothstep(0.76, 0.70, u);
  float round_pane = 0.0;
  if (ROUND == 1 && p.y < u_inner * 0.9) {
    vec2 o = (p - vec2(-0.42 * u_outer, u_inner * 0.62)) / u_outer;
    round_pane = smoothstep(0.18, 0.08, length(o * vec2(1.3, 1.0)));
  }
  vec3 light = u_window * (0.17 * pane * tall + 0.035 * far_pane * tall + 0.10 * round_pane);
  light += u_room * 0.10 * smoothstep(0.80, 1.0, q) * back;
  float mouth = smoothstep(aa, -aa, rim);
  if (mouth <= 0.0) { return light; }
  float across = p.x / (u_outer + lip);
  light += mouth * (u_room * 0.08 + u_window * 0.30 * exp(-pow((across + 0.55) * 7.0, 2.0)) +
                    u_window * 0.10 * exp(-pow((across - 0.62) * 9.0, 2.0)));
  return light;
}

void main() {
  vec2 p = vec2(v_px.x - u_foot.x, u_foot.y - v_px.y) / u_scale;
  float aa = 0.7 / u_scale;
  float outer = half_width(p.y, u_outer);
  // Outline: cylinder, round or flat bottom, a lip at the mouth.
  float lip = u_inner > 12.0 ? 0.8 : 0.55;
  float lip_h = lip * 2.2;
  float shape;
  if (ROUND == 1 && p.y < u_inner) {
    shape = length(vec2(p.x, p.y - u_inner)) - u_outer;
  } else {
    float low = ROUND == 1 ? -1e3 : u_inner - u_outer;
    vec2 centre = vec2(0.0, 0.5 * (u_height + max(low, -30.0)));
    shape = ROUND == 1 ? max(abs(p.x) - u_outer, p.y - u_height)
                         : box(p - centre, vec2(u_outer, 0.5 * (u_height - low)), min(2.0, 0.2 * u_outer));
  }
  float rim = box(p - vec2(0.0, u_height - 0.5 * lip_h), vec2(u_outer + lip, 0.5 * lip_h), 0.5 * lip_h);
  float cover = smoothstep(aa, -aa, min(shape, rim));
  if (cover <= 0.0) { discard; }
  float q = clamp(abs(p.x) / max(outer, 1e-3), 0.0, 0.9995);
  float ball = (ROUND == 1 && p.y < u_inner) ? min(length(vec2(p.x, p.y - u_inner)) / u_outer, 0.9995) : q;
  float cosine = sqrt(1.0 - ball * ball);
  float back = fresnel(cosine, 1.5);

#if PASS == 1
  o_colour = vec4(shine(p, outer, q, back, rim, lip, aa) * cover, 0.0);
#else
  float surface = u_level;
  vec3 colour = vec3(0.0);
#if PART == 1
#if HOT == 1
  if (u_boil > 0.01) { surface += u_boil * 1.6 * (noise(vec2(p.x * 0.9 + 7.0, u_time * 9.0)) - 0.4); }
#endif
  float bottom_of_meniscus = surface + u_rise * exp(-max(0.0, u_inner * (1.0 - q)) / 1.7);
  float top_of_meniscus = surface + u_rise + u_tilt * u_inner * sqrt(max(0.0, 1.0 - q * q)) + 1.3 / u_scale;
#endif
#if PART == 0 || PART == 1 || ROUND == 0
  vec3 glass = glass_only(p);
  colour = glass;
#endif
#if CLOT == 1 || BED == 1 || HOT == 1
  float wrap = asin(q) * sign(p.x) * u_inner;
#endif
#if PART != 0
  // Seen through the wall the liquid reaches out to the glass's own edge, at the sides as in the round end.
  float h = p.y;
#if ROUND == 1
  if (h < u_inner) { h = u_inner + (h - u_inner) * (u_inner / u_outer); }
#endif
  vec3 inside = liquid(p, max(h, 0.01), q);
#if CLOT == 1
  float lump = clamp(u_inner * 0.36, 1.2, 4.0);
  float clot_top = min(u_clot_mm.y + (u_clot_mm.y > u_level - 1.0 ? 0.0 : 4.0 * (fbm(vec2(wrap * 0.7, 3.0 + u_seed)) - 0.5)), surface);
  float clot_low = u_clot_mm.x + (u_clot_mm.x < 1.0 ? -1.0 : 4.0 * (fbm(vec2(wrap * 0.7, 19.0 + u_seed)) - 0.5));
  float held = smoothstep(clot_top + 0.4, clot_top - 0.2, h) * smoothstep(clot_low - 0.4, clot_low + 0.2, h);
  vec4 c = curd(vec2(wrap, h), lump);
  inside = mix(inside, u_clot.rgb * c.rgb * (0.72 + 0.28 * sqrt(1.0 - q * q)), held * c.a);
#endif
#if BED == 1
  // Across, not around: round the end the way around shrinks to nothing. A thin bed has no room for high lumps.
  float bed_lump = min(u_bed_rough, 0.5 * u_bed.a);
  float bed_top = u_bed.a + bed_lump * 1.6 * (fbm(vec2(p.x / max(u_bed_rough, 0.25), 5.0 + u_seed)) - 0.5);
  float grain = max(u_bed_rough, 0.18);
  vec2 at = vec2(p.x, h) / grain * 0.9 + u_seed;
  float lumps = fbm(at) - fbm(at + vec2(-0.27, 0.27));
  float lit = (0.80 + 0.20 * sqrt(1.0 - ball * ball)) * clamp(1.0 + 0.9 * lumps, 0.6, 1.15);
  inside = mix(inside, u_bed.rgb * lit, smoothstep(bed_top + 1.2 * aa + 0.15 * u_bed_rough, bed_top - 0.6 * aa, h));
#endif
#if PART == 1
  // The surface: from below it mirrors the dark of the room, its upper edge catches the light.
  float in_band = smoothstep(bottom_of_meniscus - aa, bottom_of_meniscus + aa, p.y);
  float t = clamp((p.y - bottom_of_meniscus) / max(top_of_meniscus - bottom_of_meniscus, 1e-3), 0.0, 1.0);
  vec3 edge = mix(inside * 0.30 + u_room * 0.015, inside * 0.62 + u_room * 0.10, t * t);
  edge += u_room * 0.22 * exp(-pow((t - 0.86) / 0.10, 2.0));
  inside = mix(inside, edge, in_band);
  float glow = exp(-pow((p.y - bottom_of_meniscus + 2.2 * aa) / (1.6 * aa), 2.0));
  inside += inside * 0.16 * glow * (1.0 - in_band);
  colour = mix(colour, inside, smoothstep(top_of_meniscus + aa, top_of_meniscus - aa, p.y));
#else
  colour = inside;
#endif
#if ROUND == 0
  colour = mix(colour, glass * 0.75 + colour * 0.15, smoothstep(0.25, -0.25, p.y) * 0.85);  // thick foot of a flat glass
#else
  colour *= 1.0 - 0.25 * smoothstep(0.0, -(u_outer - u_inner), p.y);  // thicker drop of glass at the round end
#endif
#endif
#if HOT == 1 && PART != 2
  if (u_foam > 0.1) {
    float top = surface + u_foam * (0.75 + 0.5 * noise(vec2(wrap * 0.5, 2.0 + floor(u_time * 4.0 * u_boil))));
    vec2 c = cells(vec2(wrap, p.y) / mix(1.5, 0.7, clamp((p.y - surface) / u_foam, 0.0, 1.0)));
    float film = smoothstep(0.16, 0.02, c.y - c.x);
    float bright = smoothstep(0.22, 0.05, c.x);
    float here = smoothstep(top, top - 0.6, p.y) * smoothstep(surface - 0.4, surface + 0.2, p.y);
    colour = mix(colour, mix(colour, u_room * 1.7, 0.45) * 0.86 + u_room * (0.45 * film + 0.35 * bright), here);
  }
  // Breath of steam on the glass above the liquid.
  float fog = u_steam * (0.12 + 0.30 * noise(vec2(p.x * 0.35, p.y * 0.12 - u_time * 1.3)));
  float above = smoothstep(surface, surface + 6.0, p.y);
  colour = mix(colour, u_room * 0.75, clamp(fog, 0.0, 0.5) * above);
  colour *= 1.0 - 0.10 * u_steam * above * smoothstep(0.80, 0.88, noise(p * 1.3 + 50.0));
#endif
  // Walls: what the outside throws back is missing from what comes through.
  float kept = (1.0 - back);
  colour = colour * mix(1.0, kept, 0.9) + u_room * 0.30 * (back - 0.04);
  float mouth = smoothstep(aa, -aa, rim);
  colour = mix(colour, colour * 0.80 + u_room * 0.05, mouth * (0.4 + 0.6 * smoothstep(0.3, 0.0, abs(p.y - (u_height - lip_h)) / lip)));
#if PASS == 2
  colour += shine(p, outer, q, back, rim, lip, aa);
#endif
  o_colour = vec4(colour, 1.0) * cover;
#endif
}
