#pragma once

#include "engine/assets/world.hpp"
#include "engine/scoring/ladder.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/scoring/standards.hpp"

#include <memory>
#include <stdexcept>
#include <string>

namespace matula::test {

/// The shipped world, the marking rules and the plain urine, loaded once.
struct Shipped {
  std::unique_ptr<const assets::World> world;
  scoring::Standards standards;
  specimen::Specimen plain;
};

inline const Shipped& shipped() {
  static const Shipped all = [] {
    const auto folder = std::string(MATULA_SOURCE_DIR) + "/assets";
    auto world = assets::load(folder);
    auto standards = scoring::load_standards(folder);
    auto plain = scoring::load_plain_urine(folder);
    if (!world || !standards || !plain) {
      throw std::runtime_error("the shipped assets cannot be read");
    }
    return Shipped{std::move(*world), std::move(*standards), std::move(*plain)};
  }();
  return all;
}

/// One tube of the test done by `recipe`, with `mg_per_dl` albumin in the plain urine.
inline scoring::LadderRung rung(const scoring::Recipe& recipe, double mg_per_dl,
                                const specimen::Specimen& urine = shipped().plain) {
  const auto scale = shipped().standards.rules.find_test(recipe.test)->scale;
  auto made = scoring::climb(*shipped().world, urine, recipe, scale, mg_per_dl);
  if (!made.stopped_because.empty()) {
    throw std::runtime_error(made.stopped_because);
  }
  return made;
}

inline const scoring::Recipe& by_the_book(const std::string& test) {
  return shipped().standards.recipes.at(test);
}

inline std::string word(const scoring::LadderRung& made) {
  return reading::to_word(made.read.grade);
}

} // namespace matula::test
