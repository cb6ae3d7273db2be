#include "engine/assets/world.hpp"
#include "engine/attribution/deviations.hpp"
#include "engine/attribution/gravity_steps.hpp"
#include "engine/attribution/shares.hpp"
#include "engine/attribution/tube.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/gravity_basis.hpp"
#include "engine/scoring/numeric.hpp"
#include "sim/bench/floating.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace matula::attribution {
namespace {

using scoring::say_gravity;
using scoring::say_number;

constexpr double most_of_a_division = 0.00075; // Rounding to a division makes half of one.

/// The float as it stood after some things were put right.
struct Stood {
  instrument::ScaleView scale;
  double liquid_c = 20;
};

/// One thing that may be put right, at the bench or in what was made of it.
struct Fault {
  Deviation deviation; ///< With changes only for what happened at the bench.
  enum class Where { Bench, Eye, Meniscus, Misread, Figure } where = Where::Bench;
  double error = 0; ///< Figure: what it adds to the result.
};

/// The last moment before `upto` at which the float stood in `jar`: number of events before it, and its time.
std::pair<std::size_t, double> last_afloat(const std::vector<Heard>& heard, std::size_t upto,
                                           double read_at_s, const std::string& jar) {
  std::string floating;
  std::pair<std::size_t, double> last{upto, read_at_s};
  for (std::size_t i = 0; i < upto; ++i) {
    const auto* action = std::get_if<bench::Action>(&heard[i].event.what);
    if (action == nullptr || !heard[i].done) {
      continue;
    }
    if (const auto* lowered = std::get_if<bench::Float>(action)) {
      floating = lowered->vessel;
    } else if (std::holds_alternative<bench::LiftFloat>(*action)) {
      last = floating == jar ? std::pair{i, heard[i].start_s} : last;
      floating.clear();
    }
  }
  return floating == jar ? std::pair{upto, read_at_s} : last;
}

class Explainer {
public:
  explicit Explainer(const Sitting& sitting)
      : sitting_(sitting),
        seen_(sitting.replay.float_at_reading), case_{sitting.world, sitting.scenario,
                                                      sitting.standards.rules, sitting.replay} {}

  Explanation explain() {
    Explanation e;
    const auto& why = sitting_.standards.rules.why;
    e.test = "gravity";
    e.title = "specific gravity";
    e.in_grades = false;
    e.visible = why.visible_gravity;
    const auto entry = scoring::number_from_text(case_.entry("sg.reading"));
    const auto written = sitting_.replay.written.find("sg.reading");
    if (!seen_ || !entry || written == sitting_.replay.written.end()) {
      return e;
    }
    const auto [upto, at_s] = last_afloat(sitting_.heard, events_before(sitting_.heard, "sg.reading"),
                                          written->second.time_s, seen_->vessel);
    work_ = work_on(sitting_.heard, upto, at_s, seen_->vessel);
    bench_ = Bench{&sitting_.setup, sitting_.fresh};
    as_it_was_ = stand(0);
    lines_ = scoring::gravity_steps(scoring::gravity_basis(case_), scoring::gravity_lines(case_));
    errors_ = line_errors(*entry, lines_);
    find_at_bench();
    find_at_scale(*entry);
    find_in_figures();
    Outcomes outcomes([this](PutRight set) { return value(set); });
    const auto shares = share_out(faults_.size(),
                                  {why.visible_gravity, static_cast<std::size_t>(why.exact_up_to),
                                   static_cast<std::size_t>(why.orders), sitting_.scenario.seed},
                                  outcomes);
    e.done = true;
    e.found = shares.found;
    e.put_right = shares.right;
    e.by_the_book = errors_.any_line ? scoring::true_gravity(case_).value_or(shares.right) : shares.right;
    e.found_word = say_gravity(e.found);
    e.book_word = say_gravity(e.by_the_book);
    e.exact = shares.exact;
    e.replays = outcomes.known();
    std::vector<std::string> keys;
    std::vector<std::string> words;
    std::vector<std::string> rules;
    for (const auto& fault : faults_) {
      keys.push_back(fault.deviation.key);
      words.push_back(fault.deviation.words);
      rules.push_back(fault.deviation.rule);
    }
    conclude(e, keys, words, rules, shares.matters, shares.amounts);
    return e;
  }

private:
  Fault& note(Fault::Where where, std::string key, std::string words, const std::vector<std::string>& facts,
              const std::string& item = "") {
    Fault fault;
    fault.where = where;
    fault.deviation.key = std::move(key);
    fault.deviation.words = std::move(words);
    fault.deviation.rule = broken_rule(sitting_.report.marks, sitting_.standards.rules.rules, facts);
    if (fault.deviation.rule.empty()) {
      fault.deviation.rule = item;
    }
    faults_.push_back(std::move(fault));
    return faults_.back();
  }

  /// The float with the bench faults of `set` put right.
  [[nodiscard]] Stood stand(PutRight set) const {
    std::vector<const Deviation*> right;
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      if ((set >> i & 1U) != 0 && faults_[i].where == Fault::Where::Bench) {
        right.push_back(&faults_[i].deviation);
      }
    }
    const auto state = replay(bench_, work_, right);
    const auto scale = bench::scale_view(state, sitting_.setup);
    const auto jar = state.vessels.find(work_.vessel);
    if (!scale || jar == state.vessels.end()) {
      return {seen_->scale, seen_->liquid_c};
    }
    return {*scale, column::mean_temperature_c(jar->second.column)};
  }

  [[nodiscard]] bool has(PutRight set, Fault::Where where) const {
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      if (faults_[i].where == where && (set >> i & 1U) == 0) {
        return true;
      }
    }
    return false;
  }

  /// The figure the learner comes to with a set put right.
  [[nodiscard]] double value(PutRight set) const {
    const bool bench = std::any_of(faults_.begin(), faults_.end(),
                                   [](const Fault& f) { return f.where == Fault::Where::Bench; });
    const Stood now = bench && set != 0 ? stand(set) : as_it_was_;
    double sum = now.scale.reading_at_surface + rounding_;
    sum += has(set, Fault::Where::Eye) ? off_mm_ * now.scale.parallax_per_mm : 0;
    sum += has(set, Fault::Where::Meniscus) ? now.scale.reading_at_meniscus_top - now.scale.reading_at_surface
                                            : 0;
    sum += has(set, Fault::Where::Misread) ? misread_ : 0;
    if (!errors_.any_line) {
      return sum;
    }
    sum += errors_.expected + errors_.accepted - from_inputs_;
    sum += (now.liquid_c - as_it_was_.liquid_c) / sitting_.scenario.rules.per_degrees_c * 0.001;
    for (std::size_t i = 0; i < faults_.size(); ++i) {
      sum += faults_[i].where == Fault::Where::Figure && (set >> i & 1U) == 0 ? faults_[i].error : 0;
    }
    return sum;
  }

  // --- at the bench ---

  void find_at_bench() {
    const auto end = work_.steps.size();
    Change wiped;
    wiped.kind = Change::Kind::Wiped;
    Change pours;
    pours.kind = Change::Kind::Scale;
    Change water;
    for (std::size_t i = 0; i < end; ++i) {
      const auto& action = work_.steps[i].action;
      if (const auto* lowered = std::get_if<bench::Float>(&action); lowered != nullptr && !lowered->wiped) {
        wiped.steps.push_back(i);
      }
      const auto* pour = std::get_if<bench::Pour>(&action);
      if (pour != nullptr && pour->to == work_.vessel) {
        (pour->from == "water" ? water : pours).steps.push_back(i);
      }
    }
    if (!wiped.steps.empty()) {
      note(Fault::Where::Bench, "float.wiped", "the float went in wet or dirty, with air on its bulb",
           {"bubble_ml", "float_wiped"})
          .deviation.changes = {wiped};
    }
    if (seen_->state.touches_wall) {
      note(Fault::Where::Bench, "float.wall", "the float leaned on the wall of the jar",
           {"float_touches_wall"})
          .deviation.changes = {at_the_end({bench::SpinFloat{}, bench::Wait{15}}, 1)};
    }
    if (seen_->state.grounded && !pours.steps.empty() && seen_->liquid_ml > 0) {
      find_grounded(pours);
    }
    if (!water.steps.empty() && seen_->specimen_share < 1) {
      note(Fault::Where::Bench, "float.water", "there was water in the jar besides the specimen", {})
          .deviation.changes = {water};
    }
    find_cold();
  }

  void find_grounded(Change& pours) {
    instrument::Bath bath;
    bath.inner_diameter_mm = sitting_.fresh.vessels.at(work_.vessel).column.shape.inner_diameter_mm;
    bath.density_kg_m3 = 1000;
    bath.volume_ml = seen_->liquid_ml;
    constexpr double to_spare = 1.2;
    pours.value = instrument::needed_volume_ml(sitting_.setup.urinometer, bath) * to_spare / seen_->liquid_ml;
    note(Fault::Where::Bench, "float.volume",
         fmt::format("{} mL in the jar: the float stood on the bottom", say_number(seen_->liquid_ml)),
         {"jar_grounded"})
        .deviation.changes = {pours};
  }

  void find_cold() {
    const std::string rule =
        broken_rule(sitting_.report.marks, sitting_.standards.rules.rules, {"degrees_from_float"});
    if (rule.empty()) {
      return;
    }
    Change warm;
    warm.kind = Change::Kind::RoomWarm;
    warm.at = work_.steps.size();
    warm.vessel = work_.vessel;
    note(Fault::Where::Bench, "float.temperature",
         fmt::format("the specimen was read at {} °C, far from the float's temperature",
                     say_number(seen_->liquid_c)),
         {"degrees_from_float"})
        .deviation.changes = {warm};
  }

  [[nodiscard]] Change at_the_end(std::vector<bench::Action> acts, std::size_t order) const {
    Change change;
    change.kind = Change::Kind::Insert;
    change.at = work_.steps.size();
    change.order = order;
    change.recipe.kind = procedure::StepKind::Act;
    change.recipe.acts = std::move(acts);
    return change;
  }

  // --- at the scale ---

  void find_at_scale(double entry) {
    const auto& scale = as_it_was_.scale;
    const double plain = entry - scale.reading_at_surface;
    if (std::abs(plain) <= most_of_a_division) {
      rounding_ = plain;
      return;
    }
    const auto eye = sitting_.replay.watch.eye_mm.find(seen_->vessel);
    off_mm_ = eye == sitting_.replay.watch.eye_mm.end() ? 0 : eye->second;
    const double by_eye = plain - off_mm_ * scale.parallax_per_mm;
    const double by_top = entry - scale.reading_at_meniscus_top;
    if (std::abs(by_eye) < std::abs(plain) && std::abs(by_eye) <= std::abs(by_top)) {
      note(Fault::Where::Eye, "float.eye",
           fmt::format("the eye was {} mm {} the surface", say_number(std::abs(off_mm_)),
                       off_mm_ > 0 ? "above" : "below"),
           {"eye_off_mm"}, "sg.reading");
      rest(by_eye, entry);
    } else if (std::abs(by_top) < most_of_a_division && std::abs(by_top) < std::abs(plain)) {
      note(Fault::Where::Meniscus, "float.meniscus", "read at the top of the meniscus", {}, "sg.reading");
      rest(by_top, entry);
    } else {
      rest(plain, entry);
    }
  }

  void rest(double left, double entry) {
    if (std::abs(left) <= most_of_a_division) {
      rounding_ = left;
      return;
    }
    misread_ = left;
    note(Fault::Where::Misread, "float.misread", "the scale was read as " + say_gravity(entry), {},
         "sg.reading");
  }

  // --- in the figures ---

  void find_in_figures() {
    if (!errors_.any_line) {
      return;
    }
    static constexpr std::array<const char*, 5> items{"sg.step.zero", "sg.step.temperature",
                                                      "sg.step.protein", "sg.step.glucose", "sg.corrected"};
    static constexpr std::array<const char*, 5> names{"the float's own error", "temperature", "protein",
                                                      "glucose", "the last line"};
    for (std::size_t i = 0; i < errors_.lines.size(); ++i) {
      const auto& line = errors_.lines[i];
      if (!line.wrong) {
        continue;
      }
      auto& fault = note(Fault::Where::Figure, items[i],
                         fmt::format("the correction for {} was {} instead of {}{}", names[i],
                                     scoring::say_correction(line.made),
                                     scoring::say_correction(line.made - line.error),
                                     line.slip.empty() ? "" : " (" + line.slip + ")"),
                         {}, items[i]);
      fault.error = line.error;
    }
    find_zero();
    find_thermometer();
  }

  /// The float's own error, as it was at its temperature or as it was seen in water at the room's.
  void find_zero() {
    const auto& water = sitting_.replay.watch.in_water;
    const double right = sitting_.scenario.urinometer_zero_error;
    const double shown = water ? water->scale.reading_at_surface - 1 : right;
    const double used = scoring::gravity_basis(case_).zero_error;
    if (std::min(std::abs(right - used), std::abs(shown - used)) < most_of_a_division) {
      return;
    }
    auto& fault = note(Fault::Where::Figure, "sg.zero",
                       water ? fmt::format("the float's reading in water was taken as {} instead of {}",
                                           say_gravity(1 + used), say_gravity(1 + shown))
                             : fmt::format("the float was never checked in water, where it reads {}",
                                           say_gravity(1 + right)),
                       {"zero_checked"}, "sg.zero");
    fault.error = right - used;
    from_inputs_ += fault.error;
  }

  void find_thermometer() {
    const double used = scoring::gravity_basis(case_).temperature_c;
    const double error = (used - seen_->liquid_c) / sitting_.scenario.rules.per_degrees_c * 0.001;
    if (std::abs(error) < most_of_a_division) {
      return;
    }
    auto& fault = note(Fault::Where::Figure, "sg.temperature",
                       fmt::format("the temperature was taken as {} °C instead of {} °C", say_number(used),
                                   say_number(seen_->liquid_c)),
                       {"thermometer_used"}, "sg.temperature");
    fault.error = error;
    from_inputs_ += error;
  }

  const Sitting& sitting_;
  const std::optional<scoring::FloatSeen>& seen_;
  scoring::Case case_;
  Work work_;
  Bench bench_;
  Stood as_it_was_;
  std::vector<scoring::Step> lines_;
  LineErrors errors_;
  std::vector<Fault> faults_;
  double off_mm_ = 0;
  double rounding_ = 0;
  double misread_ = 0;
  double from_inputs_ = 0; ///< What wrong figures for zero and temperature brought into the corrections.
};

} // namespace

Explanation explain_gravity(const Sitting& sitting) {
  return Explainer(sitting).explain();
}

} // namespace matula::attribution
