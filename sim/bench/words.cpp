#include "sim/bench/words.hpp"

#include <cmath>

namespace matula::bench {

std::string spoken(const VesselName& name) {
  if (name.rfind("tube-", 0) == 0) {
    return "tube " + name.substr(5);
  }
  if (name == "specimen") {
    return "the specimen cup";
  }
  if (name == "water") {
    return "the jar of water";
  }
  return "the " + name;
}

std::string spoken_ml(double volume_ml) {
  const long tenths = std::lround(std::floor(volume_ml * 10 + 1e-6));
  const std::string whole = std::to_string(tenths / 10);
  return (tenths % 10 == 0 ? whole : whole + "." + std::to_string(tenths % 10)) + " mL";
}

std::string no_such_vessel(const VesselName& name) {
  return "There is no vessel '" + name + "' on the bench: use specimen, water, jar or tube-1 to tube-12.";
}

Outcome refused(const std::string& because) {
  Outcome outcome;
  outcome.done = false;
  outcome.refused_because = because;
  return outcome;
}

} // namespace matula::bench
