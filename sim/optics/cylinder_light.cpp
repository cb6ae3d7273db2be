#include "sim/optics/cylinder_light.hpp"

#include "sim/optics/random.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::optics {

namespace {

constexpr double inner = 0.5; // Radius in diameters.
constexpr double nudge = 1e-9;

struct Photon {
  double x = 0;
  double y = 0;
  double z = 0;
  Direction d;
  bool in_glass = false;
};

void move(Photon& p, double s) {
  p.x += s * p.d.x;
  p.y += s * p.d.y;
  p.z += s * p.d.z;
}

/// Distance to the cylinder of radius r ahead of the photon, or a negative number when it is missed. From
/// inside the far crossing counts; from outside the near one.
double to_circle(const Photon& p, double r, bool from_inside) {
  const double a = p.d.x * p.d.x + p.d.z * p.d.z;
  if (a < 1e-14) {
    return -1;
  }
  const double b = p.x * p.d.x + p.z * p.d.z;
  const double c = p.x * p.x + p.z * p.z - r * r;
  const double disc = b * b - a * c;
  if (disc < 0) {
    return -1;
  }
  const double root = std::sqrt(disc);
  return from_inside ? (-b + root) / a : (-b - root) / a;
}

/// Meets the surface of index step n_from/n_to with outward normal (x, z)/r; true when the photon goes
/// through.
bool meet(Photon& p, double n_from, double n_to, Stream& random, bool may_reflect) {
  const double r = std::hypot(p.x, p.z);
  double nx = p.x / r;
  double nz = p.z / r;
  double cos_in = p.d.x * nx + p.d.z * nz;
  if (cos_in < 0) {
    nx = -nx;
    nz = -nz;
    cos_in = -cos_in;
  }
  cos_in = std::min(cos_in, 1.0);
  const double ratio = n_from / n_to;
  double cos_out = 0;
  const double reflectance = fresnel_reflectance(ratio, cos_in, cos_out);
  if (reflectance >= 1 || (may_reflect && random.next() < reflectance)) {
    p.d.x -= 2 * cos_in * nx;
    p.d.z -= 2 * cos_in * nz;
    return false;
  }
  const double along = cos_out - ratio * cos_in;
  p.d = {ratio * p.d.x + along * nx, ratio * p.d.y, ratio * p.d.z + along * nz};
  return true;
}

/// One line of sight followed on from inside the tube until it leaves; returns the length spent in liquid.
double follow(Photon& p, const LitCylinder& tube, double scatter, Stream& random, bool scatters) {
  const double outer = inner + tube.wall;
  double in_liquid = 0;
  double free = scatters ? -std::log(1 - random.next()) / scatter : 1e300;
  constexpr int patience = 2000000; // No path of any weight is so long.
  for (int i = 0; i < patience && std::fabs(p.y) < tube.end_distance; ++i) {
    if (!p.in_glass) {
      const double wall_at = to_circle(p, inner, true);
      const double end_at = wall_at < 0 ? tube.end_distance : wall_at;
      if (free < end_at) {
        move(p, free);
        in_liquid += free;
        turn(p.d, tube.asymmetry, random);
        free = -std::log(1 - random.next()) / scatter;
        continue;
      }
      move(p, end_at);
      in_liquid += end_at;
      free -= end_at;
      if (wall_at >= 0) {
        p.in_glass = meet(p, tube.liquid_index, tube.glass_index, random, scatters);
      }
      continue;
    }
    const double back = to_circle(p, inner, false);
    if (back > nudge) {
      move(p, back);
      p.in_glass = !meet(p, tube.glass_index, tube.liquid_index, random, scatters);
      continue;
    }
    const double out = to_circle(p, outer, true);
    move(p, out < 0 ? tube.end_distance : out);
    if (out >= 0 && meet(p, tube.glass_index, 1.0, random, scatters)) {
      break;
    }
  }
  return in_liquid;
}

/// The line of sight from the eye to where it enters the liquid.
Photon enter(const LitCylinder& tube, double offset, Stream& random) {
  const double outer = inner + tube.wall;
  const double x = offset * inner;
  Photon p;
  p.x = x;
  p.z = std::sqrt(outer * outer - x * x);
  p.d = {0, 0, -1};
  p.in_glass = true;
  meet(p, 1.0, tube.glass_index, random, false);
  move(p, to_circle(p, inner, false));
  meet(p, tube.glass_index, tube.liquid_index, random, false);
  p.in_glass = false;
  return p;
}

} // namespace

double Surround::radiance(const Direction& d) const {
  constexpr double degree = std::numbers::pi / 180;
  if (d.z < 0) {
    return -d.z > std::cos(card_half_angle_deg * degree) ? card : beside_card;
  }
  return d.z > std::cos(observer_half_angle_deg * degree) ? observer : room;
}

Surround white_card() {
  return {1.0, 0.5, 1.0 / 0.9, 0.3, 63, 20};
}

Surround black_card() {
  return {0.004, 0.5, 1.0 / 0.9, 0.3, 63, 20};
}

double chord(const LitCylinder& tube, double offset) {
  const double beside =
      offset * inner / tube.liquid_index; // n r sin(angle) is kept through concentric walls.
  return 2 * std::sqrt(inner * inner - beside * beside);
}

CylinderLight trace_cylinder(const LitCylinder& tube, double offset, double reduced_scatter,
                             const std::vector<double>& absorptions, const Surround& white,
                             const Surround& black, std::size_t paths, std::uint64_t seed) {
  const double scatter = reduced_scatter / (1 - tube.asymmetry);
  Stream random(seed);
  const Photon start = enter(tube, offset, random);
  Photon straight = start;
  const double length = follow(straight, tube, 0, random, false);
  const double passes = std::exp(-scatter * length);
  CylinderLight light;
  for (const double absorption : absorptions) {
    const double direct = passes * std::exp(-absorption * length);
    light.on_white.push_back(direct * white.radiance(straight.d));
    light.on_black.push_back(direct * black.radiance(straight.d));
  }
  if (scatter <= 0) {
    return light;
  }
  const double share = (1 - passes) / static_cast<double>(paths);
  for (std::size_t i = 0; i < paths; ++i) {
    Photon p = start;
    // Every path is made to scatter once inside the first chord; the rest went straight.
    const double first = -std::log(1 - random.next() * (1 - passes)) / scatter;
    move(p, first);
    turn(p.d, tube.asymmetry, random);
    const double path = first + follow(p, tube, scatter, random, true);
    const double on_white = share * white.radiance(p.d);
    const double on_black = share * black.radiance(p.d);
    for (std::size_t k = 0; k < absorptions.size(); ++k) {
      const double left = std::exp(-absorptions[k] * path);
      light.on_white[k] += on_white * left;
      light.on_black[k] += on_black * left;
    }
  }
  return light;
}

} // namespace matula::optics
