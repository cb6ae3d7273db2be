// One visible piece: granule 0, floc 1, clot 2, crystal 3, bubble 4; or a bar of ink on the glass, 5.
in vec2 v_at;
in float v_px_size;
flat in vec4 v_colour;
flat in vec4 v_kind;
out vec4 o_colour;
void main() {
  float seed = v_kind.y * 97.0;
  int kind = int(v_kind.x + 0.5);
  vec2 p = v_at;
  float spin = seed * 6.28;
  mat2 turned = mat2(cos(spin), sin(spin), -sin(spin), cos(spin));
  float r = length(p);
  float angle = atan(p.y, p.x);
  float soft = max(v_px_size * 0.7, 0.06);
  float alpha = 0.0;
  float lit = 1.0;
  if (kind == 5) {
    float inside = step(max(abs(p.x), abs(p.y)), 1.0);
    o_colour = vec4(v_colour.rgb * v_colour.a * inside, v_colour.a * inside);
    return;
  }
  if (kind == 4) {
    alpha = smoothstep(1.0 + soft, 1.0 - soft, r);
    float ring = smoothstep(0.62, 0.98, r);
    float shine = smoothstep(0.42, 0.12, length(p - vec2(-0.38, 0.42)));
    vec3 c = v_colour.rgb * (0.20 + 1.1 * shine);
    float a = v_colour.a * alpha * clamp(0.75 * ring + 0.8 * shine + 0.06, 0.0, 1.0);
    o_colour = vec4(c * a, a);
    return;
  }
  if (kind == 3) {
    vec2 d = turned * p;
    float rhomb = abs(d.x) * 0.75 + abs(d.y) * 1.35;
    alpha = smoothstep(1.0 + soft, 1.0 - soft, rhomb);
    lit = d.x * d.y > 0.0 ? 1.1 : 0.75;
  } else if (kind == 0) {
    float bumps = 0.16 * sin(3.0 * angle + seed) + 0.10 * sin(5.0 * angle + seed * 2.3) + 0.05 * sin(9.0 * angle + seed * 5.1);
    alpha = smoothstep(1.0 + soft, 1.0 - soft, r / (0.86 + bumps));
    lit = 0.92 + 0.16 * dot(p, vec2(-0.6, 0.7));
  } else {
    // Flakes: soft lobes of finer stuff, denser within.
    float big = kind == 2 ? 1.0 : 0.0;
    vec2 w = p * (1.1 + 0.4 * big) + seed;
    float body = fbm(w * 1.6) * 0.9 + fbm(w * 4.5 + 9.0) * 0.45;
    float edge = r + 0.30 * sin(2.0 * angle + seed) * 0.5 - (body - 0.62) * (1.25 - 0.4 * big);
    alpha = smoothstep(0.92, mix(0.35, 0.72, big), edge);
    float slope = fbm(w * 2.6) - fbm(w * 2.6 + vec2(0.22, -0.22));
    lit = clamp(0.94 - 0.9 * slope + 0.08 * p.y, 0.55, 1.1);
    if (kind == 2) {
      vec2 c = cells(p * 2.1 + seed + 0.5 * body);
      float crack = smoothstep(0.02, 0.14, c.y - c.x);
      lit *= mix(0.62, 1.0, crack);
      alpha *= mix(0.7, 1.0, crack);
    } else {
      alpha *= 0.55 + 0.45 * smoothstep(0.35, 0.75, body);
    }
  }
  float a = alpha * v_colour.a * (1.0 - 0.9 * v_kind.z);
  o_colour = vec4(v_colour.rgb * lit * a, a);
}
