#include "engine/attribution/comparison.hpp"

#include "engine/attribution/gaps.hpp"
#include "engine/scoring/explain.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace matula::attribution {

using scoring::say_number;
using scoring::say_time;
using Kind = Deed::Kind;

std::optional<std::size_t> Comparison::first_taken() const {
  for (std::size_t i = 0; i < work_.steps.size(); ++i) {
    const auto& action = work_.steps[i].action;
    const auto* pour = std::get_if<bench::Pour>(&action);
    const auto* dip = std::get_if<bench::DipPaper>(&action);
    if ((pour != nullptr && pour->from == "specimen" && work_.vessels.count(pour->to) > 0) ||
        (dip != nullptr && dip->vessel == "specimen")) {
      return i;
    }
  }
  return std::nullopt;
}

void Comparison::specimen() {
  const auto taken = first_taken();
  if (!taken) {
    return;
  }
  const double now_s = trail_.points[*taken].time_s;
  double mixed_s = -1;
  for (std::size_t i = 0; i < *taken; ++i) {
    const auto* mix = std::get_if<bench::Mix>(&work_.steps[i].action);
    mixed_s = mix != nullptr && mix->vessel == "specimen" ? trail_.points[i + 1].since_s : mixed_s;
  }
  if (mixed_s < 0 || now_s - mixed_s > method_.why.settled_s) {
    auto& one =
        note("specimen.mixed",
             mixed_s < 0 ? "the specimen was not mixed before it was taken from"
                         : "the specimen had stood " + say_time(now_s - mixed_s) + " since it was mixed",
             {"specimen_mixed", "mixed_before_dip"});
    Change change;
    change.kind = Change::Kind::Insert;
    change.at = *taken;
    change.recipe.kind = procedure::StepKind::Mix;
    change.recipe.to = "specimen";
    change.recipe.seconds = 5;
    one.changes = {change};
  }
  if (const double off_k = trail_.points[*taken].specimen_c - method_.room_c;
      std::abs(off_k) > method_.why.cold_k) {
    auto& one = note("specimen.temperature",
                     fmt::format("the specimen was used at {} °C instead of at the room's temperature",
                                 say_number(trail_.points[*taken].specimen_c)),
                     {"specimen_c_at_dip", "temperature_at_first_use_c"});
    Change change;
    change.kind = Change::Kind::RoomWarm;
    change.at = *taken;
    change.vessel = "specimen";
    one.changes = {change};
  }
  if (now_s > method_.why.stale_s) {
    auto& one =
        note("specimen.age", "the specimen stood " + say_time(now_s) + " before it was taken from", {});
    one.changes = shorten(work_, 0, *taken, now_s - method_.why.fresh_s);
  }
}

} // namespace matula::attribution
