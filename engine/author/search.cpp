#include "engine/author/search.hpp"

#include "engine/assets/world.hpp"
#include "engine/practice/dose.hpp"
#include "engine/scoring/numeric.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::author {

namespace {

constexpr double negative_enough = 0.35; // Grades: nothing weaker is asked of a negative tube,
constexpr double top_enough = 0.4;       // nor a stronger one of the last word than this below it.
constexpr double targeted_enough = 0.02;

const scoring::TestRule& rule_of(const Shelf& shelf, const std::string& test) {
  return *shelf.standards->rules.find_test(test);
}

std::vector<double> spread(double low, double high, std::size_t count, bool by_ratio) {
  std::vector<double> steps;
  for (std::size_t i = 0; i < count; ++i) {
    const double share = static_cast<double>(i) / static_cast<double>(count - 1);
    steps.push_back(by_ratio ? low * std::pow(high / low, share) : low + (high - low) * share);
  }
  return low == high ? std::vector<double>{low} : steps;
}

} // namespace

Search::Search(Turning& turning, const Wish& wish) : turning_(turning), wish_(wish) {
  for (const auto& [test, want] : wish.tests) {
    take_in(test, want);
  }
  for (const auto& wanted : wish.amounts) {
    turning_.fix(wanted.place, wanted.amount);
  }
}

/// Tests of pH and of gravity say what the whole urine is to be; the others join those made of the same.
void Search::take_in(const std::string& test, const Want& want) {
  const auto& shelf = turning_.shelf();
  const auto& rule = rule_of(shelf, test);
  const auto number = scoring::number_from_text(rule.words[want.grade]);
  if (shelf.standards->recipes.at(test).ladder_species == procedure::of_ph) {
    wish_.ph = wish_.ph ? wish_.ph : number;
    return;
  }
  const auto analyte = analyte_of(test, want, shelf);
  if (!analyte) {
    const bool of_gravity = number && *number > 1 && *number < 1.1;
    wish_.gravity = !wish_.gravity && of_gravity ? number : wish_.gravity;
    return;
  }
  auto at =
      std::find_if(groups_.begin(), groups_.end(), [&](const Group& one) { return one.analyte == *analyte; });
  if (at == groups_.end()) {
    groups_.push_back({*analyte, ladder_of(*analyte, test), {}, true, shelf.compose.near_enough});
    at = groups_.end() - 1;
  }
  at->tests.push_back(test);
  at->all_negative = at->all_negative && want.grade == 0 && !want.target;
  at->enough = want.target ? targeted_enough : at->enough;
}

/// The test's own ladder, or doublings up to there for a substance it is not made
/// of.
std::vector<double> Search::ladder_of(const Place& analyte, const std::string& test) const {
  const auto& shelf = turning_.shelf();
  const auto& catalogue = shelf.world->catalogue;
  const double most = most_of(analyte, *shelf.limits, catalogue).value_or(0);
  const auto& recipe = shelf.standards->recipes.at(test);
  std::vector<double> ladder{0};
  if (analyte.section == "dissolved" && analyte.key == recipe.ladder_species) {
    for (const double mg_per_dl : recipe.ladder_mg_per_dl) {
      const double dose = from_mg_per_dl(mg_per_dl, analyte.key, *shelf.limits, catalogue);
      if (dose > 0) {
        ladder.push_back(std::min(dose, most));
      }
    }
    return ladder;
  }
  for (double dose = most / 4096; dose < most * 0.9; dose *= 2) {
    ladder.push_back(dose);
  }
  ladder.push_back(most);
  return ladder;
}

double Search::off(const std::string& test, double intensity) const {
  const auto& want = wish_.tests.at(test);
  const auto last = static_cast<double>(rule_of(turning_.shelf(), test).words.size() - 1);
  const auto grade = static_cast<double>(want.grade);
  if (want.target) {
    return intensity - *want.target;
  }
  if (want.grade == 0) {
    return std::max(0.0, intensity - negative_enough);
  }
  return grade == last ? std::min(0.0, intensity - (last - top_enough)) : intensity - grade;
}

/// Of the tests of a group: the middle between the one farthest too strong and the one farthest too weak,
/// which is 0 where the worst of them is as near as one dose can bring it; or else that worst distance.
double Search::worst(const Group& group, bool between) {
  double strongest = -1e9;
  double weakest = 1e9;
  for (const auto& test : group.tests) {
    const auto shown = turning_.show(test);
    const double error = off(test, shown.intensity.value_or(0));
    strongest = std::max(strongest, error);
    weakest = std::min(weakest, error);
  }
  return between ? (strongest + weakest) / 2 : std::max(std::abs(strongest), std::abs(weakest));
}

bool Search::turn_group(const Group& group) {
  if (turning_.is_fixed(group.analyte)) {
    return false; // How much there is of it was wished: the test shows what that shows.
  }
  const double loose = 1.5;
  if (!first_ && worst(group, false) <= loose * group.enough) {
    return false;
  }
  if (group.all_negative) {
    const bool was_there = turning_.amount(group.analyte) > 0;
    turning_.set(group.analyte, 0);
    return was_there;
  }
  const double was = turning_.amount(group.analyte);
  std::map<double, double> tried;
  const auto off = [&](double amount) {
    if (tried.count(amount) == 0) {
      turning_.set(group.analyte, amount);
      tried[amount] = worst(group, true);
    }
    return tried[amount];
  };
  constexpr double near = 1.4; // After the first round the dose moves little.
  const int most = turning_.shelf().compose.most_tubes;
  auto dose = first_ || !(was > 0)
                  ? practice::Dose{0, 1e9, 0}
                  : practice::find_dose({0, was / near, was * near}, off, group.enough, most / 2);
  if (std::abs(dose.off) > group.enough) {
    const auto anew = practice::find_dose(group.ladder, off, group.enough, most);
    dose = std::abs(anew.off) < std::abs(dose.off) ? anew : dose;
  }
  turning_.set(group.analyte, dose.amount);
  constexpr double same = 0.001;
  return std::abs(dose.amount - was) > same * dose.amount;
}

/// Gravity is all but straight in the concentration, so that the straight line through two points soon finds
/// it.
bool Search::turn_gravity() {
  const bool with_yellow = !wish_.colour && wish_.gravity;
  const double within = turning_.shelf().compose.gravity_within;
  const auto at = [&](double factor) {
    turning_.concentrate(factor, with_yellow);
    return turning_.gravity() - *wish_.gravity;
  };
  if (!wish_.gravity) {
    turning_.concentrate(1, false);
    return false;
  }
  double error = at(turning_.factor());
  if (std::abs(error) <= within) {
    return false;
  }
  double low = 0.01;
  double high = turning_.most_factor();
  double low_error = at(low);
  double high_error = at(high);
  if (low_error > 0) {
    blocked_.push_back(
        fmt::format("The specific gravity {:.3f} cannot be had: what the tests need weighs {:.4f} before "
                    "there is any salt or urea.",
                    *wish_.gravity, *wish_.gravity + low_error));
    (void)at(low);
    return true;
  }
  if (high_error < 0) {
    blocked_.push_back(
        fmt::format("The specific gravity {:.3f} cannot be had: with as much salt and urea as a scenario "
                    "may hold it is {:.4f}. Contrast medium or much sugar weighs more.",
                    *wish_.gravity, *wish_.gravity + high_error));
    return true;
  }
  constexpr int most_tries = 12;
  for (int i = 0; i < most_tries && std::abs(error) > within; ++i) {
    const double factor = low + (high - low) * std::clamp(-low_error / (high_error - low_error), 0.02, 0.98);
    error = at(factor);
    (error < 0 ? low : high) = factor;
    (error < 0 ? low_error : high_error) = error;
  }
  return true;
}

/// Sets the step in the middle of those that read as wished. The steps are tried in order.
template <typename Set, typename Read>
bool Search::middle_of_word(const std::vector<double>& steps, const std::string& word, const Set& set,
                            const Read& read) {
  std::vector<double> good;
  for (const double step : steps) {
    set(step);
    if (read() == word) {
      good.push_back(step);
    } else if (!good.empty()) {
      break;
    }
  }
  set(good.empty() ? steps.front() : good[good.size() / 2]);
  return !good.empty();
}

bool Search::is_analyte(const std::string& key) const {
  return std::any_of(groups_.begin(), groups_.end(),
                     [&](const Group& one) { return one.analyte.key == key; });
}

bool Search::turn_colour() {
  if (!wish_.colour || (!first_ && turning_.colour() == *wish_.colour)) {
    return false;
  }
  const auto& knobs = turning_.shelf().compose.colours;
  const auto knob = std::find_if(knobs.begin(), knobs.end(),
                                 [&](const ColourKnob& one) { return one.word == *wish_.colour; });
  if (knob == knobs.end()) {
    return false;
  }
  constexpr std::size_t steps = 9;
  const bool by_yellow = knob->with.empty();
  turning_.set_yellow(knob->yellow.front());
  const auto set = [&](double step) {
    if (by_yellow) {
      turning_.set_yellow(step);
    }
    for (std::size_t i = 0; i < knob->with.size(); ++i) {
      if (!is_analyte(knob->with[i])) { // A test's own substance is its test's to say.
        turning_.set({"dissolved", knob->with[i]}, step * knob->amounts[i]);
      }
    }
  };
  const auto& ends = by_yellow ? knob->yellow : knob->factors;
  (void)middle_of_word(spread(ends.front(), ends.back(), steps, true), *wish_.colour, set,
                       [&] { return turning_.colour(); });
  return true;
}

bool Search::turn_clarity() {
  if (!wish_.clarity || (!first_ && turning_.clarity() == *wish_.clarity)) {
    return false;
  }
  const auto& rules = turning_.shelf().compose;
  if (is_analyte(rules.clarity.key)) {
    return false;
  }
  (void)middle_of_word(
      rules.clarity_ladder, *wish_.clarity, [&](double amount) { turning_.set(rules.clarity, amount); },
      [&] { return turning_.clarity(); });
  return true;
}

bool Search::round() {
  blocked_.clear();
  if (first_ && wish_.ph) {
    turning_.set_ph(*wish_.ph);
  }
  bool turned = turn_gravity();
  turned = turn_colour() || turned;
  turned = turn_clarity() || turned;
  for (const Group& group : groups_) {
    turned = turn_group(group) || turned;
  }
  first_ = false;
  return turned;
}

void Search::settle_gravity() {
  if (blocked_.empty()) {
    (void)turn_gravity();
  }
}

std::string Search::why_missed(const std::string& test, const Shown& got) const {
  const auto& shelf = turning_.shelf();
  const auto& rule = rule_of(shelf, test);
  const auto& want = wish_.tests.at(test);
  std::string why = fmt::format("{} cannot be had as {}: ", rule.title, rule.words[want.grade]);
  if (!got.stopped_because.empty()) {
    return why + "the bench says: " + got.stopped_because;
  }
  const bool weak = got.intensity.value_or(0) < static_cast<double>(want.grade);
  for (const Group& group : groups_) {
    if (std::find(group.tests.begin(), group.tests.end(), test) == group.tests.end()) {
      continue;
    }
    const double dose = turning_.amount(group.analyte);
    const std::string so_much = say_amount(group.analyte, dose, *shelf.limits);
    if (turning_.is_fixed(group.analyte)) {
      return why + fmt::format("with the {} that is wished it reads {} ({}).", so_much, got.word, got.seen);
    }
    if (group.tests.size() > 1) {
      std::string others;
      for (const auto& other : group.tests) {
        others += other == test ? "" : (others.empty() ? "" : ", ") + rule_of(shelf, other).title;
      }
      return why +
             fmt::format(
                 "the same substance makes {} too; with {} it reads {}, and more or less of it spoils the "
                 "other.",
                 others, so_much, got.word);
    }
    if (weak && dose >= 0.9 * group.ladder.back()) {
      return why + fmt::format("with {}, the most a scenario may hold, it reads {} ({}).", so_much, got.word,
                               got.seen);
    }
    if (!weak && !(dose > 0)) {
      return why +
             fmt::format("without any {} it still reads {} ({}): something else in this urine makes it.",
                         group.analyte.key, got.word, got.seen);
    }
    return why + fmt::format("with {} it reads {} ({}), and a little {} of it passes over the word wished.",
                             so_much, got.word, got.seen, weak ? "more" : "less");
  }
  return why + fmt::format("it reads {} on this urine.", got.word);
}

} // namespace matula::author
