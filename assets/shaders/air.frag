// KIND 0 flame, 1 steam; in units of their rectangle, y up.
in vec2 v_uv;
out vec4 o_colour;
uniform float u_time;
uniform float u_strength;
uniform vec3 u_room;
void main() {
  vec2 p = vec2(v_uv.x * 2.0 - 1.0, 1.0 - v_uv.y);
#if KIND == 0
    float sway = (noise(vec2(p.y * 2.2 - u_time * 3.1, 1.7)) - 0.5) * 0.22 * p.y;
    float x = p.x - sway;
    float breath = 0.94 + 0.06 * noise(vec2(u_time * 6.0, 4.0));
    float y = p.y / (0.96 * breath);
    float outer_r = 0.27 * pow(max(0.0, sin(3.14159 * pow(clamp(y, 0.0, 1.0), 0.62))), 0.8) + 0.12 * (1.0 - clamp(y * 3.0, 0.0, 1.0));
    float e = abs(x) / max(outer_r, 1e-3);
    float outer = smoothstep(1.15, 0.55, e) * smoothstep(1.0, 0.80, y) * smoothstep(0.0, 0.03, y);
    float shell = exp(-pow((e - 0.86) / 0.20, 2.0)) * smoothstep(1.02, 0.85, y);
    float cone_h = 0.44 * breath;
    float cone_r = 0.14 * (1.0 - clamp(y / cone_h, 0.0, 1.0));
    float c = abs(x) / max(cone_r, 1e-3);
    float cone_edge = y < cone_h ? exp(-pow((c - 0.9) / 0.30, 2.0)) : 0.0;
    float cone_core = y < cone_h ? smoothstep(1.0, 0.2, c) : 0.0;
    vec3 light = vec3(0.10, 0.20, 0.62) * (0.30 * outer + 0.45 * shell);
    light += vec3(0.25, 0.70, 1.0) * cone_edge * 0.85 + vec3(0.06, 0.22, 0.40) * cone_core * 0.7;
    light += vec3(0.55, 0.22, 0.42) * 0.14 * outer * smoothstep(0.45, 0.95, y);
    float cover = clamp(0.25 * outer + 0.35 * cone_edge + 0.2 * cone_core, 0.0, 0.8);
    o_colour = vec4(light * u_strength, cover * u_strength * 0.7);
#else
  float y = p.y;
  float wide = 0.30 + 0.6 * y;
  vec2 w = vec2(p.x * 1.3 + 0.4 * noise(vec2(y * 3.0 - u_time * 0.7, 8.0)), y * 2.6 - u_time * 0.85);
  float puff = fbm(w * 1.8) * 1.25 * smoothstep(1.0, 0.2, abs(p.x) / wide);
  float a = u_strength * smoothstep(0.30, 0.85, puff) * smoothstep(1.0, 0.35, y) * smoothstep(0.0, 0.10, y) * 0.75;
  o_colour = vec4(u_room * 1.25 * a, a);
#endif
}
