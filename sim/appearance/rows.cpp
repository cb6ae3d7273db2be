#include "sim/appearance/rows.hpp"

#include "sim/appearance/eye.hpp"

#include <algorithm>
#include <cmath>

namespace matula::appearance {

namespace {

constexpr std::size_t row_count = 80;
constexpr double narrowest_mm = 0.5;
constexpr double widest_blur_mm = 7; // Beyond the width of the tube nothing more is lost.

optics::Xyz blend(const optics::Xyz& one, const optics::Xyz& other, double share) {
  return {one.x + share * (other.x - one.x), one.y + share * (other.y - one.y),
          one.z + share * (other.z - one.z)};
}

/// Optics at a height: between the middles of the two layers around it.
LayerOptics at_height(const std::vector<SeenLayer>& layers, std::size_t sharp, double height_mm) {
  std::size_t i = 0;
  while (i + 1 < layers.size() && layers[i].to_mm < height_mm) {
    ++i;
  }
  const auto middle = [&](std::size_t k) { return 0.5 * (layers[k].from_mm + layers[k].to_mm); };
  if (i < sharp) {
    return layers[i].optics;
  }
  const bool up = height_mm > middle(i);
  if ((up && i + 1 == layers.size()) || (!up && i == sharp)) {
    return layers[i].optics;
  }
  const std::size_t low = up ? i : i - 1;
  const double share = (height_mm - middle(low)) / (middle(low + 1) - middle(low));
  return between(layers[low].optics, layers[low + 1].optics, share);
}

/// Luminance of the light that a spectrum of transmissions lets through.
double luminance(const optics::Spectrum& light, const Seeing& seeing) {
  return optics::to_xyz(light, seeing.tables.colorimetry, seeing.view.lamp).y;
}

void colour_row(Row& row, const LayerOptics& o, double width_mm, const TwoCards& pieces, double undrawn,
                const Seeing& seeing) {
  std::array<optics::Spectrum, lateral_samples> white{};
  std::array<optics::Spectrum, lateral_samples> black{};
  optics::Spectrum clear{};
  optics::Spectrum straight{};
  for (std::size_t i = 0; i < optics::band_count; ++i) {
    const auto light = seeing.lookup.at(o.reduced_scatter[i] * width_mm, o.absorb[i] * width_mm);
    for (std::size_t k = 0; k < lateral_samples; ++k) {
      white[k][i] = light.on_white[k];
      black[k][i] = light.on_black[k];
    }
    clear[i] = std::exp(-o.absorb[i] * width_mm);
    straight[i] = clear[i] * std::exp(-o.scatter[i] * width_mm);
  }
  const double hidden = -std::expm1(-o.hidden * width_mm);
  const double blurred = -std::expm1(-o.hidden * undrawn * width_mm);
  for (std::size_t k = 0; k < lateral_samples; ++k) {
    row.on_white[k] = blend(seen(white[k], seeing), pieces.on_white, blurred);
    row.on_black[k] = blend(seen(black[k], seeing), pieces.on_black, blurred);
  }
  row.opacity = 1 - (1 - hidden) * luminance(straight, seeing);
  // What is left of the line, over all the light that reaches the eye from there.
  const double haze_left = std::exp(-o.print_loss);
  const double share_of_light = luminance(clear, seeing) / std::max(luminance(white[0], seeing), 1e-9);
  row.print_contrast = std::min(1.0, haze_left * share_of_light) * std::exp(-o.strayed * width_mm);
  // The same light parted for the picture. What was not scattered keeps every edge; the rest is the
  // small-angle theory's peak, as wide as its mean number of scatterings makes it. Pieces that are drawn hide
  // print themselves.
  const double unscattered = luminance(straight, seeing) / std::max(luminance(clear, seeing), 1e-9);
  const double from_card = std::min(1.0, share_of_light) * (1 - blurred);
  const double kept_by_drawn = std::exp(-o.hidden * (1 - undrawn) * width_mm);
  row.print_sharp = std::min(from_card, unscattered * std::min(1.0, share_of_light) *
                                            std::exp(-o.strayed * width_mm) / kept_by_drawn);
  row.print_halo = from_card - row.print_sharp;
  row.print_blur_mm = std::min(widest_blur_mm, o.forward_turn * width_mm * (card_gap_mm + width_mm / 2) /
                                                   std::max(1 - unscattered, 1e-9));
  // Pieces half way through the tube are seen through half of its haze.
  row.granularity = std::min(1.0, std::sqrt(std::expm1(o.graininess * width_mm))) * std::sqrt(haze_left);
}

} // namespace

double width_at(const column::VesselShape& shape, double height_mm) {
  const double r = shape.inner_diameter_mm / 2;
  if (!shape.round_bottom || height_mm >= r) {
    return shape.inner_diameter_mm;
  }
  return std::max(narrowest_mm, 2 * std::sqrt(std::max(0.0, height_mm * (2 * r - height_mm))));
}

std::vector<Row> make_rows(const column::VesselShape& shape, const std::vector<SeenLayer>& layers,
                           std::size_t sharp, const TwoCards& pieces, double undrawn, const Seeing& seeing) {
  std::vector<Row> rows;
  if (layers.empty() || layers.back().to_mm <= 0) {
    return rows;
  }
  const double thickness = layers.back().to_mm / row_count;
  LayerOptics before;
  double width_before = -1;
  for (std::size_t i = 0; i < row_count; ++i) {
    Row row;
    row.height_mm = (static_cast<double>(i) + 0.5) * thickness;
    row.thickness_mm = thickness;
    const double width_mm = width_at(shape, row.height_mm);
    LayerOptics o = at_height(layers, sharp, row.height_mm);
    o.print_loss *= width_mm / shape.inner_diameter_mm;
    if (width_mm == width_before && o == before) {
      Row same = rows.back();
      same.height_mm = row.height_mm;
      rows.push_back(same);
      continue;
    }
    colour_row(row, o, width_mm, pieces, undrawn, seeing);
    rows.push_back(row);
    before = o;
    width_before = width_mm;
  }
  return rows;
}

} // namespace matula::appearance
