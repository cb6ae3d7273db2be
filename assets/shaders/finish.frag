in vec2 v_px;
out vec4 o_colour;
uniform sampler2D u_light;
vec3 encode(vec3 v) {
  return mix(12.92 * v, 1.055 * pow(max(v, vec3(1e-6)), vec3(1.0 / 2.4)) - 0.055, step(0.0031308, v));
}
void main() {
  vec3 light = clamp(texelFetch(u_light, ivec2(gl_FragCoord.xy), 0).rgb, 0.0, 1.0);
  // Evenly spread thresholds (interleaved gradient pattern) keep steps finer than one code alive on average.
  vec3 threshold = fract(52.9829189 * fract(vec3(dot(v_px, vec2(0.06711056, 0.00583715))) + vec3(0.0, 0.37, 0.71)));
  o_colour = vec4(floor(encode(light) * 255.0 + threshold) / 255.0, 1.0);
}
