#pragma once

#include "sim/matter/particle.hpp"
#include "sim/matter/species.hpp"

#include <vector>

namespace matula::matter {

/// The solids of one portion, by ParticleId. Most kinds are absent from most liquids: only those that were
/// ever put in take memory and time. References stay good until a kind is put in that was not there.
class Populations {
public:
  struct Entry {
    ParticleId kind;
    Population population;
  };

  Populations() = default;
  explicit Populations(std::size_t kinds) : kinds_(kinds) {}

  /// Number of kinds that may be there; valid ids are below it.
  [[nodiscard]] std::size_t size() const { return kinds_; }
  void resize(std::size_t kinds) { kinds_ = kinds; }

  /// To read: an empty population for a kind that is absent.
  [[nodiscard]] const Population& operator[](ParticleId kind) const;
  /// To change: puts the kind in if it is absent.
  [[nodiscard]] Population& of(ParticleId kind);

  /// Those that were ever put in, by rising id; some may be empty again.
  [[nodiscard]] const std::vector<Entry>& present() const { return present_; }
  [[nodiscard]] std::vector<Entry>& present() { return present_; }

  /// Takes everything out.
  void clear() { present_.clear(); }

private:
  std::size_t kinds_ = 0;
  std::vector<Entry> present_;
};

/// Calls `act(kind)` for every kind that is in one or the other, by rising id. `act` may put kinds in that
/// are in the other already.
template <class Act> void for_each_in_either(const Populations& one, const Populations& other, Act act) {
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < one.present().size() || j < other.present().size()) {
    const bool left = i < one.present().size();
    const bool right = j < other.present().size();
    const ParticleId kind = !right || (left && one.present()[i].kind <= other.present()[j].kind)
                                ? one.present()[i].kind
                                : other.present()[j].kind;
    act(kind);
    i += i < one.present().size() && one.present()[i].kind == kind ? 1 : 0;
    j += j < other.present().size() && other.present()[j].kind == kind ? 1 : 0;
  }
}

} // namespace matula::matter
