#include "sim/matter/populations.hpp"

#include <algorithm>

namespace matula::matter {

namespace {

bool before(const Populations::Entry& entry, ParticleId kind) {
  return entry.kind < kind;
}

} // namespace

const Population& Populations::operator[](ParticleId kind) const {
  static const Population none{};
  for (const Entry& entry : present_) { // a handful: faster than a search by halves
    if (entry.kind >= kind) {
      return entry.kind == kind ? entry.population : none;
    }
  }
  return none;
}

Population& Populations::of(ParticleId kind) {
  const auto at = std::lower_bound(present_.begin(), present_.end(), kind, before);
  if (at != present_.end() && at->kind == kind) {
    return at->population;
  }
  return present_.insert(at, {kind, {}})->population;
}

} // namespace matula::matter
