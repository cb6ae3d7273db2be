#include "sim/appearance/pieces.hpp"

#include "sim/appearance/eye.hpp"
#include "sim/optics/random.hpp"

#include <algorithm>
#include <cmath>

namespace matula::appearance {

namespace {

using matter::size_bins;

/// Pieces of one kind and class in the whole column.
struct Crowd {
  matter::ParticleId kind = 0;
  std::size_t bin = 0;
  double count = 0;
  std::vector<double> up_to; ///< Running count to the top of each layer.
};

std::vector<Crowd> crowds(const std::vector<LayerPlace>& layers, const Seeing& seeing) {
  std::vector<Crowd> all;
  for (matter::ParticleId kind = 0; kind < seeing.tables.scatter.size(); ++kind) {
    const ScatterTable& t = seeing.tables.scatter[kind];
    const auto holds = [kind](const LayerPlace& place) { return !place.layer->populations[kind].empty(); };
    if (std::none_of(layers.begin(), layers.end(), holds)) {
      continue;
    }
    for (std::size_t bin = 0; bin < size_bins; ++bin) {
      if (t.diameter_mm[bin] < visible_size_mm) {
        continue;
      }
      Crowd crowd{kind, bin, 0, {}};
      const double each_g = seeing.catalogue.particles[kind].bin_mass_g(bin);
      for (const LayerPlace& place : layers) {
        crowd.count += place.layer->populations[kind].grams[bin] / each_g;
        crowd.up_to.push_back(crowd.count);
      }
      if (crowd.count > 0) {
        all.push_back(std::move(crowd));
      }
    }
  }
  return all;
}

/// Height below which the share `u` of the crowd hangs.
double height_of(const Crowd& crowd, const std::vector<LayerPlace>& layers, double u) {
  const double wanted = u * crowd.count;
  std::size_t i = 0;
  double below = 0;
  while (i + 1 < layers.size() && crowd.up_to[i] < wanted) {
    below = crowd.up_to[i];
    ++i;
  }
  const double here = crowd.up_to[i] - below;
  const double share = here > 0 ? std::clamp((wanted - below) / here, 0.0, 1.0) : 0.5;
  return layers[i].from_mm + share * (layers[i].to_mm - layers[i].from_mm);
}

Piece make_piece(const Crowd& crowd, std::uint64_t name, const std::vector<LayerPlace>& layers,
                 const column::VesselShape& shape, const ScatterTable& t) {
  optics::Stream random(name);
  Piece piece;
  const double from_axis = std::sqrt(random.next());
  const double turn = 2 * 3.14159265358979323846 * random.next();
  piece.height_mm = height_of(crowd, layers, random.next());
  // Neighbouring classes differ by a quarter in size; spread the pieces over the gap.
  piece.size_mm = t.diameter_mm[crowd.bin] * std::exp((random.next() - 0.5) * 0.23);
  const double room =
      std::max(0.0, width_at(shape, piece.height_mm) - piece.size_mm) / shape.inner_diameter_mm;
  piece.x = room * from_axis * std::cos(turn);
  piece.z = room * from_axis * std::sin(turn);
  piece.kind = piece.size_mm > floc_size_mm ? PieceKind::Floc : PieceKind::Granule;
  piece.opacity = t.piece_opacity[crowd.bin];
  piece.shape_seed = static_cast<std::uint32_t>(optics::hash(name) >> 32U);
  return piece;
}

const matter::Mixture& fullest(const Crowd& crowd, const std::vector<LayerPlace>& layers) {
  std::size_t best = 0;
  double most = -1;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const double grams = layers[i].layer->populations[crowd.kind].grams[crowd.bin];
    if (grams > most) {
      most = grams;
      best = i;
    }
  }
  return *layers[best].layer;
}

double kept_share(const std::vector<Crowd>& all) {
  double total = 0;
  for (const Crowd& crowd : all) {
    total += crowd.count;
  }
  return std::min(1.0, most_pieces / std::max(total, 1.0));
}

} // namespace

double undrawn_share(const std::vector<LayerPlace>& layers, const Seeing& seeing) {
  return 1 - kept_share(crowds(layers, seeing));
}

std::vector<Piece> make_pieces(const std::vector<LayerPlace>& layers, const column::VesselShape& shape,
                               const Seeing& seeing, std::uint64_t seed) {
  std::vector<Piece> pieces;
  const std::vector<Crowd> all = crowds(layers, seeing);
  const double width_mm = shape.inner_diameter_mm;
  const double kept = kept_share(all);
  for (const Crowd& crowd : all) {
    const std::uint64_t family = optics::hash(optics::hash(seed + crowd.kind * size_bins) + crowd.bin);
    optics::Stream random(family);
    // A fractional piece is there with that probability.
    const auto count = static_cast<std::uint64_t>(crowd.count * kept + random.next());
    if (count == 0) {
      continue;
    }
    const optics::Xyz colour =
        piece_colour(crowd.kind, crowd.bin, fullest(crowd, layers), width_mm, seeing).on(seeing.view.card);
    for (std::uint64_t i = 0; i < count; ++i) {
      pieces.push_back(make_piece(crowd, family + i + 1, layers, shape, seeing.tables.scatter[crowd.kind]));
      pieces.back().colour = colour;
    }
  }
  std::stable_sort(pieces.begin(), pieces.end(), [](const Piece& a, const Piece& b) { return a.z < b.z; });
  return pieces;
}

TwoCards mean_piece_colour(const std::vector<LayerPlace>& layers, double width_mm, const Seeing& seeing) {
  TwoCards mean;
  double weight = 0;
  const auto add = [](optics::Xyz& to, const optics::Xyz& what, double times) {
    to = {to.x + times * what.x, to.y + times * what.y, to.z + times * what.z};
  };
  for (const Crowd& crowd : crowds(layers, seeing)) {
    const ScatterTable& t = seeing.tables.scatter[crowd.kind];
    const double area =
        crowd.count * t.diameter_mm[crowd.bin] * t.diameter_mm[crowd.bin] * t.piece_opacity[crowd.bin];
    const TwoCards colour = piece_colour(crowd.kind, crowd.bin, fullest(crowd, layers), width_mm, seeing);
    add(mean.on_white, colour.on_white, area);
    add(mean.on_black, colour.on_black, area);
    weight += area;
  }
  if (weight > 0) {
    mean.on_white = {mean.on_white.x / weight, mean.on_white.y / weight, mean.on_white.z / weight};
    mean.on_black = {mean.on_black.x / weight, mean.on_black.y / weight, mean.on_black.z / weight};
  }
  return mean;
}

} // namespace matula::appearance
