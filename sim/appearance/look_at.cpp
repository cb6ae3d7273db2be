#include "sim/appearance/clot.hpp"
#include "sim/appearance/optics_tables.hpp"
#include "sim/appearance/pieces.hpp"
#include "sim/appearance/rows.hpp"
#include "sim/appearance/surface.hpp"
#include "sim/column/layers.hpp"

#include "sim/optics/random.hpp"

#include <algorithm>

namespace matula::appearance {

namespace {

using matter::size_bins;

std::vector<LayerPlace> places(const column::Column& column) {
  std::vector<LayerPlace> all;
  const std::vector<column::Extent> heights = column::extents(column);
  for (std::size_t i = 0; i < column.layers.size(); ++i) {
    all.push_back({&column.layers[i], heights[i].from_mm, heights[i].to_mm});
  }
  return all;
}

double solids_g(const matter::Mixture& mixture) {
  double sum = 0;
  for (const auto& [kind, population] : mixture.populations.present()) {
    sum += population.total_g();
  }
  return sum;
}

double settled_share(const column::Column& column) {
  const double settled = solids_g(column.sediment);
  double all = settled;
  for (const matter::Mixture& layer : column.layers) {
    all += solids_g(layer);
  }
  return all > 0 ? settled / all : 0;
}

/// Size of the lumps that hold most of the bed, mm.
double lump_size_mm(const matter::Mixture& bed, const std::vector<ScatterTable>& tables) {
  double sum = 0;
  double weight = 0;
  for (const auto& [kind, population] : bed.populations.present()) {
    for (std::size_t bin = 0; bin < size_bins; ++bin) {
      sum += population.grams[bin] * tables[kind].diameter_mm[bin];
      weight += population.grams[bin];
    }
  }
  return weight > 0 ? sum / weight : 0;
}

/// A bed too thin to be seen is no bed: 0.05 mm is half the smallest visible thing.
constexpr double thinnest_bed_mm = 0.05;

Sediment look_of_bed(const column::Column& column, const Seeing& seeing) {
  Sediment bed;
  bed.height_mm = column.shape.level_mm(column.sediment.volume_ml);
  if (column.heavy.volume_ml > 0) {
    return {}; // it lies on the heavy liquid, and its rows show it
  }
  if (bed.height_mm < thinnest_bed_mm || solids_g(column.sediment) <= 0) {
    return {};
  }
  bed.colour =
      packed_colour(column.sediment, width_at(column.shape, bed.height_mm / 2), seeing).on(seeing.view.card);
  bed.roughness_mm = lump_size_mm(column.sediment, seeing.tables.scatter);
  return bed;
}

std::vector<SeenLayer> seen_layers(const column::Column& column, const std::vector<LayerPlace>& layers,
                                   const Seeing& seeing) {
  const PrintLoss loss = print_loss(seeing.tables.scatter, column.shape.inner_diameter_mm);
  const auto optics_of = [&](const matter::Mixture& mixture) {
    return layer_optics(mixture, seeing.catalogue, seeing.tables.scatter, loss);
  };
  std::vector<SeenLayer> all;
  const double border_mm = column.shape.level_mm(column.heavy.volume_ml);
  if (column.heavy.volume_ml > 0) {
    all.push_back({0, border_mm, optics_of(column.heavy)});
  }
  if (column.sediment.volume_ml > 0) {
    const double to_ml = column.heavy.volume_ml + column.sediment.volume_ml;
    all.push_back({border_mm, column.shape.level_mm(to_ml), optics_of(column.sediment)});
  }
  for (const LayerPlace& place : layers) {
    all.push_back({place.from_mm, place.to_mm, optics_of(*place.layer)});
  }
  return all;
}

/// Steam forms where the liquid is at the boil, and not in the cold part below it.
double boils_from_mm(const std::vector<LayerPlace>& layers) {
  constexpr double at_the_boil_c = 99; // layers that boil hand some heat on between two steps
  const auto lowest = std::find_if(layers.begin(), layers.end(), [](const LayerPlace& place) {
    return place.layer->temperature_c >= at_the_boil_c;
  });
  return lowest == layers.end() ? 0 : lowest->from_mm;
}

void look_at_surface(Appearance& looks, const column::Column& column) {
  const double top_c =
      column.layers.empty() ? column.sediment.temperature_c : column.layers.back().temperature_c;
  looks.meniscus_rise_mm = meniscus_rise_mm(column.shape.inner_diameter_mm / 2, top_c);
  looks.boiling = std::clamp(column.boiling, 0.0, 1.0);
  looks.steam = std::max(looks.boiling, steam_over(top_c));
}

} // namespace

Appearance look_at(const column::Column& column, const matter::Catalogue& catalogue,
                   const OpticsTables& tables, const View& view, std::uint64_t seed) {
  Appearance looks;
  looks.inner_diameter_mm = column.shape.inner_diameter_mm;
  looks.wall_mm = column.shape.wall_mm;
  looks.vessel_height_mm = column.shape.height_mm;
  looks.round_bottom = column.shape.round_bottom;
  looks.marks = column.shape.marks;
  looks.view = view;
  looks.grain_seed = static_cast<std::uint32_t>(optics::hash(seed) >> 32U);
  const double volume_ml = column.volume_ml();
  if (volume_ml <= 0) {
    return looks;
  }
  looks.level_mm = column.shape.level_mm(volume_ml);
  const CylinderLookup lookup(tables.cylinder);
  const Seeing seeing{catalogue, tables, lookup, view};
  const std::vector<LayerPlace> layers = places(column);
  const std::vector<SeenLayer> optics = seen_layers(column, layers, seeing);
  const std::size_t sharp = optics.size() - layers.size();
  looks.rows =
      make_rows(column.shape, optics, sharp, mean_piece_colour(layers, looks.inner_diameter_mm, seeing),
                undrawn_share(layers, seeing), seeing);
  looks.pieces = make_pieces(layers, column.shape, seeing, seed);
  looks.sediment = look_of_bed(column, seeing);
  looks.settled_share = settled_share(column);
  const ClotLook clot = find_clot(layers, looks.level_mm, looks.inner_diameter_mm, seeing);
  looks.clot_fraction = clot.fraction;
  looks.clot_from_mm = clot.from_mm;
  looks.clot_to_mm = clot.to_mm;
  looks.clot_colour = clot.colour;
  looks.heavy_to_mm = column.shape.level_mm(column.heavy.volume_ml);
  look_at_surface(looks, column);
  looks.boils_from_mm = looks.boiling > 0 ? boils_from_mm(layers) : 0;
  return looks;
}

} // namespace matula::appearance
