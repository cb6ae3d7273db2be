// Noise and light shared by every shader. All colours are linear light; 1 is the white card.
float hash2(vec2 p) {
  uvec2 q = uvec2(ivec2(p) + 32768);
  uint n = (q.x * 1597334673u) ^ (q.y * 3812015801u);
  n = (n ^ (n >> 15u)) * 2246822519u;
  n = (n ^ (n >> 13u)) * 3266489917u;
  return float((n >> 8u) & 0xFFFFFFu) / 16777216.0;
}
float noise(vec2 p) {
  vec2 i = floor(p);
  vec2 f = p - i;
  f = f * f * (3.0 - 2.0 * f);
  return mix(mix(hash2(i), hash2(i + vec2(1, 0)), f.x), mix(hash2(i + vec2(0, 1)), hash2(i + vec2(1, 1)), f.x), f.y);
}
float fbm(vec2 p) {
  float sum = 0.0;
  float part = 0.5;
  for (int i = 0; i < 4; ++i) {
    sum += part * noise(p);
    p = p * 2.03 + vec2(17.1, 9.2);
    part *= 0.5;
  }
  return sum;
}
// Distances to the nearest and second nearest of scattered points.
vec2 cells(vec2 p) {
  vec2 i = floor(p);
  vec2 f = p - i;
  vec2 best = vec2(9.0);
  for (int y = -1; y <= 1; ++y) {
    for (int x = -1; x <= 1; ++x) {
      vec2 g = vec2(x, y);
      vec2 o = vec2(hash2(i + g), hash2(i + g + 57.3));
      float d = length(g + 0.1 + 0.8 * o - f);
      if (d < best.x) { best = vec2(d, best.x); } else if (d < best.y) { best.y = d; }
    }
  }
  return best;
}
float box(vec2 p, vec2 half_size, float corner) {
  vec2 q = abs(p) - half_size + corner;
  return length(max(q, 0.0)) + min(max(q.x, q.y), 0.0) - corner;
}
// Share of unpolarised light a smooth wall of index n throws back, by Fresnel's equations.
float fresnel(float cos_in, float n) {
  float s2 = (1.0 - cos_in * cos_in) / (n * n);
  float c = sqrt(max(0.0, 1.0 - s2));
  float a = (cos_in - n * c) / (cos_in + n * c);
  float b = (c - n * cos_in) / (c + n * cos_in);
  return 0.5 * (a * a + b * b);
}
