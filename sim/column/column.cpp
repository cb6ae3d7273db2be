#include "sim/column/column.hpp"

#include "sim/column/layers.hpp"
#include "sim/matter/density.hpp"

#include <algorithm>
#include <bit>

namespace matula::column {

namespace {

/// The falling stream drags along this many times its own volume of what stands on top; fitted here.
constexpr double stream_entrainment = 2.0;

/// Liquid run down the wall stops on the first layer that is not lighter than itself.
std::size_t resting_place(const Column& column, const matter::Mixture& liquid,
                          const matter::Catalogue& catalogue) {
  const double density = matter::density_kg_m3(liquid, catalogue);
  std::size_t at = column.layers.size();
  while (at > 0 && matter::density_kg_m3(column.layers[at - 1], catalogue) < density) {
    --at;
  }
  return at;
}

/// Pours through the top: the stream and the liquid it drags along become one portion.
void fall_in(Column& column, matter::Mixture liquid) {
  const double drag_ml = stream_entrainment * liquid.volume_ml;
  double taken_ml = 0;
  while (!column.layers.empty() && taken_ml < drag_ml) {
    matter::Mixture& top = column.layers.back();
    const double part_ml = std::min(top.volume_ml, drag_ml - taken_ml);
    taken_ml += part_ml;
    if (part_ml >= top.volume_ml) {
      matter::merge(liquid, top);
      column.layers.pop_back();
    } else {
      matter::merge(liquid, matter::draw(top, part_ml));
    }
  }
  column.layers.push_back(std::move(liquid));
}

/// FNV-1a over 64-bit words.
class Hasher {
public:
  void add(std::uint64_t word) {
    for (int byte = 0; byte < 8; ++byte) {
      value_ = (value_ ^ ((word >> (8 * byte)) & 0xffU)) * 0x100000001b3ULL;
    }
  }
  void add(double number) { add(std::bit_cast<std::uint64_t>(number)); }
  void add(const matter::Mixture& mixture) {
    add(mixture.volume_ml);
    add(mixture.temperature_c);
    for (const double amount : mixture.mmol) {
      add(amount);
    }
    for (matter::ParticleId kind = 0; kind < mixture.populations.size(); ++kind) {
      const matter::Population& population = mixture.populations[kind];
      for (const double grams : population.grams) {
        add(grams);
      }
      add(population.clot_g);
    }
  }
  [[nodiscard]] std::uint64_t value() const { return value_; }

private:
  std::uint64_t value_ = 0xcbf29ce484222325ULL;
};

} // namespace

double Column::volume_ml() const {
  double total = sediment.volume_ml + heavy.volume_ml;
  for (const matter::Mixture& layer : layers) {
    total += layer.volume_ml;
  }
  return total;
}

Column empty_column(const VesselShape& shape, const matter::Catalogue& catalogue) {
  Column column;
  column.shape = shape;
  column.sediment = matter::empty_mixture(catalogue);
  column.heavy = matter::empty_mixture(catalogue);
  return column;
}

double pour_in_heavy(Column& column, const matter::Mixture& liquid, const matter::Catalogue& catalogue) {
  const double room_ml = std::max(0.0, column.shape.capacity_ml - column.volume_ml());
  matter::Mixture rest = liquid;
  if (column.heavy.mmol.empty()) {
    column.heavy = matter::empty_mixture(catalogue); // a column put together by hand
  }
  matter::merge(column.heavy, matter::draw(rest, room_ml));
  column.calm_step_s = 0;
  return liquid.volume_ml > room_ml ? rest.volume_ml : 0;
}

matter::Mixture draw_out_heavy(Column& column, double volume_ml) {
  return matter::draw(column.heavy, volume_ml);
}

double pour_in(Column& column, const matter::Mixture& liquid, bool gently,
               const matter::Catalogue& catalogue) {
  const double room_ml = std::max(0.0, column.shape.capacity_ml - column.volume_ml());
  matter::Mixture rest = liquid;
  matter::Mixture poured = matter::draw(rest, room_ml);
  if (poured.volume_ml <= 0) {
    return liquid.volume_ml;
  }
  if (gently) {
    const std::size_t at = resting_place(column, poured, catalogue);
    column.layers.insert(column.layers.begin() + static_cast<std::ptrdiff_t>(at), std::move(poured));
    slice_border(column, at + 1);
    slice_border(column, at);
  } else {
    fall_in(column, std::move(poured));
  }
  refine(column);
  column.calm_step_s = 0;
  return rest.volume_ml;
}

matter::Mixture draw_out(Column& column, double volume_ml, const matter::Catalogue& catalogue) {
  matter::Mixture taken = matter::empty_mixture(catalogue);
  while (!column.layers.empty() && taken.volume_ml < volume_ml) {
    matter::Mixture& top = column.layers.back();
    const double part_ml = volume_ml - taken.volume_ml;
    if (part_ml >= top.volume_ml) {
      matter::merge(taken, top);
      column.layers.pop_back();
    } else {
      matter::merge(taken, matter::draw(top, part_ml));
      break;
    }
  }
  if (column.layers.empty() && taken.volume_ml < volume_ml) {
    matter::merge(taken, matter::draw(column.sediment, volume_ml - taken.volume_ml));
  }
  refine(column);
  column.calm_step_s = 0;
  return taken;
}

matter::Mixture whole(const Column& column, const matter::Catalogue& catalogue) {
  matter::Mixture all = matter::empty_mixture(catalogue);
  matter::merge(all, column.heavy);
  matter::merge(all, column.sediment);
  for (const matter::Mixture& layer : column.layers) {
    matter::merge(all, layer);
  }
  return all;
}

double mean_temperature_c(const Column& column) {
  double heat = column.sediment.temperature_c * column.sediment.volume_ml +
                column.heavy.temperature_c * column.heavy.volume_ml;
  for (const matter::Mixture& layer : column.layers) {
    heat += layer.temperature_c * layer.volume_ml;
  }
  const double volume_ml = column.volume_ml();
  return volume_ml > 0 ? heat / volume_ml : column.sediment.temperature_c;
}

std::uint64_t state_hash(const Column& column) {
  Hasher hasher;
  for (const matter::Mixture& layer : column.layers) {
    hasher.add(layer);
  }
  hasher.add(column.sediment);
  if (column.heavy.volume_ml > 0) {
    hasher.add(column.heavy);
  }
  hasher.add(column.boil_over_ml);
  hasher.add(column.boiling);
  hasher.add(column.calm_step_s);
  return hasher.value();
}

} // namespace matula::column
