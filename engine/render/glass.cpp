#include "engine/render/glass.hpp"

#include "engine/render/hash.hpp"

#include <algorithm>
#include <cmath>

namespace matula::render {

using appearance::Appearance;
using appearance::lateral_samples;
using appearance::Row;

double turn_rad(const Cylinder& c, double x_mm) {
  const double b = std::min(std::abs(x_mm), c.outer_mm);
  const double in_glass = b / glass_index;
  double turn = 2 * (std::asin(b / c.outer_mm) - std::asin(in_glass / c.outer_mm));
  if (in_glass < c.inner_mm) {
    const double at_wall = std::asin(in_glass / c.inner_mm);
    const double inside = b / (c.inside_index * c.inner_mm);
    // Past the critical angle the inner wall is a mirror.
    turn += inside < 1 ? 2 * (at_wall - std::asin(inside)) : 2 * at_wall - std::acos(-1.0);
  }
  return x_mm < 0 ? -turn : turn;
}

double card_x_mm(const Cylinder& cylinder, double x_mm, double distance_mm) {
  const double turn = turn_rad(cylinder, x_mm);
  return (x_mm - distance_mm * std::sin(turn)) / std::cos(turn);
}

double seen_x_mm(const Cylinder& cylinder, double x_mm, double z_mm) {
  double seen = x_mm * cylinder.inside_index;
  const double limit = 0.985 * cylinder.outer_mm;
  for (int i = 0; i < 4; ++i) {
    seen = std::clamp(seen, -limit, limit);
    const double half = turn_rad(cylinder, seen) / 2;
    seen = cylinder.inside_index * (x_mm * std::cos(half) - z_mm * std::sin(half));
  }
  return std::clamp(seen, -limit, limit);
}

std::array<float, 3> shown(const optics::Xyz& colour) {
  const optics::LinearRgb rgb = optics::to_display(colour);
  return {static_cast<float>(rgb.r), static_cast<float>(rgb.g), static_cast<float>(rgb.b)};
}

namespace {

using Texels = std::array<std::array<float, 4>, row_columns>;

Texels texels_of(const Row& row) {
  Texels out{};
  for (std::size_t i = 0; i < lateral_samples; ++i) {
    const auto white = shown(row.on_white[i]);
    const auto black = shown(row.on_black[i]);
    out[i] = {white[0], white[1], white[2], 1};
    out[lateral_samples + i] = {black[0], black[1], black[2], 1};
  }
  out[2 * lateral_samples] = {static_cast<float>(row.print_sharp), static_cast<float>(row.print_blur_mm),
                              static_cast<float>(row.print_halo), 1};
  return out;
}

/// Opacity of the row at a height, for what stands in front of a piece.
double opacity_at(const Appearance& looks, double height_mm) {
  for (const Row& row : looks.rows) {
    if (height_mm < row.height_mm + row.thickness_mm / 2) {
      return row.opacity;
    }
  }
  return looks.rows.empty() ? 0 : looks.rows.back().opacity;
}

Cylinder cylinder_of(const Appearance& looks) {
  return {looks.inner_diameter_mm / 2 + looks.wall_mm, looks.inner_diameter_mm / 2, water_index};
}

} // namespace

RowImage row_image(const Appearance& looks, double pitch_mm) {
  RowImage image;
  image.pitch_mm = pitch_mm;
  if (looks.rows.empty() || looks.level_mm <= 0) {
    return image;
  }
  std::vector<Texels> known;
  known.reserve(looks.rows.size());
  for (const Row& row : looks.rows) {
    known.push_back(texels_of(row));
  }
  image.rows = std::max(1, static_cast<int>(std::ceil(looks.level_mm / pitch_mm)) + 1);
  image.texels.reserve(static_cast<std::size_t>(image.rows) * row_columns * 4);
  std::size_t lower = 0;
  for (int r = 0; r < image.rows; ++r) {
    const double height = (r + 0.5) * pitch_mm;
    while (lower + 1 < known.size() && looks.rows[lower + 1].height_mm <= height) {
      ++lower;
    }
    const std::size_t upper = std::min(lower + 1, known.size() - 1);
    const double gap = looks.rows[upper].height_mm - looks.rows[lower].height_mm;
    const double part = gap > 0 ? std::clamp((height - looks.rows[lower].height_mm) / gap, 0.0, 1.0) : 0;
    for (std::size_t c = 0; c < row_columns; ++c) {
      for (std::size_t k = 0; k < 4; ++k) {
        const double v =
            known[lower][c][k] + part * (static_cast<double>(known[upper][c][k]) - known[lower][c][k]);
        image.texels.push_back(static_cast<float>(v));
      }
    }
  }
  return image;
}

std::vector<DrawnPiece> drawn_pieces(const Appearance& looks) {
  std::vector<DrawnPiece> out;
  out.reserve(looks.pieces.size());
  const Cylinder cylinder = cylinder_of(looks);
  for (const appearance::Piece& piece : looks.pieces) {
    double radius = cylinder.inner_mm;
    double round_part = 1;
    if (looks.round_bottom && piece.height_mm < radius) {
      const double below = radius - piece.height_mm;
      round_part = std::sqrt(std::max(0.0, radius * radius - below * below)) / radius;
    }
    DrawnPiece d;
    // Sideways the glass magnifies on the axis and squeezes at the edge; nothing shows beyond the glass.
    const double seen = seen_x_mm(cylinder, piece.x * radius, piece.z * radius) * round_part;
    const double edge = cylinder.outer_mm * round_part;
    const double part = edge > 0 ? std::min(std::abs(seen) / edge, 1.0) : 1;
    const double wide =
        std::min(piece.size_mm * water_index * std::max(0.3, std::sqrt(1 - part * part)), 1.6 * edge);
    const double most = std::max(0.0, edge - 0.62 * wide);
    d.x_mm = static_cast<float>(std::clamp(seen, -most, most));
    d.height_mm = static_cast<float>(std::max(piece.height_mm, 0.5 * piece.size_mm));
    d.tall_mm = static_cast<float>(piece.size_mm);
    d.wide_mm = static_cast<float>(wide);
    d.rgb = shown(piece.colour);
    d.opacity = static_cast<float>(std::clamp(piece.opacity, 0.0, 1.0));
    d.kind = static_cast<float>(piece.kind);
    d.seed = static_cast<float>(unit_of(piece.shape_seed));
    // Light crosses the liquid in front of the piece only.
    const double through = std::clamp(1 - opacity_at(looks, piece.height_mm), 1e-6, 1.0);
    d.veil = static_cast<float>(1 - std::pow(through, std::clamp((1 - piece.z) / 2, 0.0, 1.0)));
    out.push_back(d);
  }
  return out;
}

double bare_card_mm(const Appearance& looks) {
  return looks.round_bottom ? 1.15 * (looks.inner_diameter_mm / 2 + looks.wall_mm) : 1.0;
}

std::vector<DrawnPiece> boiling_bubbles(const Appearance& looks, double seconds) {
  std::vector<DrawnPiece> out;
  if (looks.boiling <= 0.01 || looks.level_mm <= 2) {
    return out;
  }
  const int count = static_cast<int>(10 + 60 * looks.boiling);
  const Cylinder cylinder = cylinder_of(looks);
  for (int i = 0; i < count; ++i) {
    const auto key = static_cast<std::uint32_t>(i);
    const double rise_s = 0.35 + 0.5 * unit_of(key * 7U + 1U);
    const double cycle = seconds / rise_s + unit_of(key * 7U + 2U);
    const auto turn = static_cast<std::uint32_t>(static_cast<std::int64_t>(std::floor(cycle)));
    const double part = cycle - std::floor(cycle);
    const double share = 0.15 + 0.6 * unit_of(key * 7U + 3U + turn * 1013U);
    const double from = looks.boils_from_mm + (looks.level_mm - looks.boils_from_mm) * share;
    const double x = 1.6 * (unit_of(key * 7U + 4U + turn * 1013U) - 0.5) + 0.05 * std::sin(20 * cycle);
    const double z = 1.4 * (unit_of(key * 7U + 5U + turn * 1013U) - 0.5);
    DrawnPiece d;
    const double seen = seen_x_mm(cylinder, x * 0.8 * cylinder.inner_mm, z * 0.6 * cylinder.inner_mm);
    d.height_mm = static_cast<float>(from + part * (looks.level_mm - from));
    d.tall_mm = static_cast<float>((0.5 + 2.6 * unit_of(key * 7U + 6U) * looks.boiling) * (0.5 + 0.5 * part));
    d.wide_mm = d.tall_mm * 1.25F;
    const double most = std::max(0.0, cylinder.outer_mm - 0.7 * static_cast<double>(d.wide_mm));
    d.x_mm = static_cast<float>(std::clamp(seen, -most, most));
    d.rgb = {0.9F, 0.92F, 0.95F};
    d.opacity = 0.8F;
    d.kind = static_cast<float>(appearance::PieceKind::Bubble);
    d.seed = static_cast<float>(unit_of(key + 77U));
    out.push_back(d);
  }
  return out;
}

std::uint64_t look_hash(const Appearance& looks) {
  Hash h;
  h.add(looks.inner_diameter_mm, 1e-3).add(looks.wall_mm, 1e-3).add(looks.vessel_height_mm, 1e-2);
  h.add(looks.level_mm, 0.02).add(looks.meniscus_rise_mm, 0.02).add(looks.round_bottom ? 1.0 : 0.0, 1);
  h.add(static_cast<double>(looks.view.card), 1).add(static_cast<double>(looks.view.lamp), 1);
  const auto colour = [&](const optics::Xyz& c) { h.add(c.x, 5e-4).add(c.y, 5e-4).add(c.z, 5e-4); };
  for (const Row& row : looks.rows) {
    h.add(row.height_mm, 0.02)
        .add(row.print_sharp, 2e-3)
        .add(row.print_halo, 2e-3)
        .add(row.print_blur_mm, 0.01);
    for (std::size_t i = 0; i < lateral_samples; ++i) {
      colour(row.on_white[i]);
      colour(row.on_black[i]);
    }
  }
  for (const appearance::Piece& piece : looks.pieces) {
    h.add(piece.x, 2e-3).add(piece.z, 2e-3).add(piece.height_mm, 0.02).add(piece.size_mm, 0.01);
    h.add(piece.opacity, 5e-3).add(piece.shape_seed, 1).add(static_cast<double>(piece.kind), 1);
    colour(piece.colour);
  }
  h.add(looks.sediment.height_mm, 0.02).add(looks.sediment.roughness_mm, 0.02);
  colour(looks.sediment.colour);
  h.add(looks.clot_fraction, 2e-3).add(looks.clot_from_mm, 0.02).add(looks.clot_to_mm, 0.02);
  colour(looks.clot_colour);
  if (looks.powder) {
    h.add(looks.powder->cover, 2e-3).add(looks.powder->grain_mm, 0.01);
    colour(looks.powder->colour);
  }
  for (const column::GlassMark& mark : looks.marks) {
    h.add(mark.label).add(mark.height_mm, 0.02);
  }
  h.add(looks.boiling, 0.01).add(looks.boils_from_mm, 0.5).add(looks.steam, 0.01).add(looks.foam_mm, 0.05);
  return h.value();
}

} // namespace matula::render
