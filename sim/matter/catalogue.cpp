#include "sim/matter/catalogue.hpp"

namespace matula::matter {

namespace {

/// Rows are few and looked up while loading, so a plain search keeps their order the only order.
template <typename Row>
std::optional<std::size_t> index_of(const std::vector<Row>& rows, std::string_view key) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i].key == key) {
      return i;
    }
  }
  return std::nullopt;
}

} // namespace

std::optional<SpeciesId> Catalogue::find_species(std::string_view key) const {
  return index_of(species, key);
}

std::optional<ParticleId> Catalogue::find_particle(std::string_view key) const {
  return index_of(particles, key);
}

const Reagent* Catalogue::find_reagent(std::string_view key) const {
  const auto index = index_of(reagents, key);
  return index ? &reagents[*index] : nullptr;
}

} // namespace matula::matter
