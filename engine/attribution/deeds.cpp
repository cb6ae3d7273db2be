#include "engine/attribution/deeds.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace matula::attribution {
namespace {

/// A test's own reagents count together, each by its strength.
std::pair<std::string, double> known_as(const std::string& bottle, const scoring::TestRule& test) {
  const auto found = std::find(test.reagents.begin(), test.reagents.end(), bottle);
  if (found == test.reagents.end()) {
    return {bottle, 1.0};
  }
  const auto i = static_cast<std::size_t>(found - test.reagents.begin());
  return {"reagent", i < test.strengths.size() ? test.strengths[i] : 1.0};
}

Deed added(const std::string& bottle, double volume_ml, bool gently, const scoring::TestRule& test) {
  Deed deed;
  const auto [what, strength] = known_as(bottle, test);
  deed.what = what;
  deed.bottle = bottle;
  deed.amount = volume_ml * strength;
  deed.gently = gently;
  return deed;
}

Deed other(const char* verb, double amount, const std::string& bottle = "") {
  Deed deed;
  deed.kind = Deed::Kind::Other;
  deed.what = verb;
  deed.amount = amount;
  deed.bottle = bottle;
  return deed;
}

/// Whatever else a hand can do; nothing for what leaves no trace in a tube.
struct OtherDeed {
  std::optional<Deed> operator()(const bench::DipPaper& a) const { return other("dip", a.seconds); }
  std::optional<Deed> operator()(const bench::BlotPaper& /*a*/) const { return other("blot", 0); }
  std::optional<Deed> operator()(const bench::DropOn& a) const { return other("drop", a.drops, a.reagent); }
  std::optional<Deed> operator()(const bench::LayPaper& /*a*/) const { return other("lay", 0); }
  std::optional<Deed> operator()(const bench::Filter& a) const { return other("filter", a.volume_ml); }
  std::optional<Deed> operator()(const bench::SprinkleSulphur& /*a*/) const { return other("sulphur", 0); }
  std::optional<Deed> operator()(const bench::Centrifuge& a) const { return other("spin", a.seconds); }
  template <typename A> std::optional<Deed> operator()(const A& /*a*/) const { return std::nullopt; }
};

/// Reads a learner's steps one by one.
class Reader {
public:
  Reader(const Work& work, const Trail& trail, const scoring::TestRule& test)
      : work_(work), trail_(trail), test_(test) {}

  std::vector<Deed> read() {
    for (at_ = 0; at_ < work_.steps.size(); ++at_) {
      std::visit([this](const auto& a) { take(a); }, work_.steps[at_].action);
    }
    for (auto& [vessel, deed] : hot_) {
      close(vessel, deed, work_.steps.size());
    }
    std::stable_sort(deeds_.begin(), deeds_.end(),
                     [](const Deed& a, const Deed& b) { return a.begin_s < b.begin_s; });
    return std::move(deeds_);
  }

private:
  [[nodiscard]] bool follows(const std::string& vessel) const { return work_.vessels.count(vessel) > 0; }

  void push(Deed deed, const std::string& vessel) {
    deed.read_vessel = vessel == work_.vessel || vessel.empty();
    deed.steps = {at_};
    deed.next_step = at_ + 1;
    deed.begin_s = trail_.points[at_].time_s;
    deed.end_s = trail_.points[at_ + 1].since_s;
    deeds_.push_back(std::move(deed));
  }

  void take(const bench::Pour& a) {
    if (!follows(a.to)) {
      return;
    }
    // By way of a vessel that only passed the specimen on, it is specimen all the same.
    const auto passed = only_.find(a.from);
    const bool specimen = a.from == "specimen" || (passed != only_.end() && passed->second);
    Deed deed = added(specimen ? "specimen" : a.from, a.volume_ml, a.gently, test_);
    deed.diluted = specimen && wet_.count(a.from) > 0;
    if (a.from == "water") {
      wet_.insert(a.to);
    } else {
      auto& only = only_.emplace(a.to, true).first->second;
      only = only && specimen;
      if (deed.diluted) {
        wet_.insert(a.to);
      }
    }
    push(std::move(deed), a.to);
  }
  void take(const bench::Dispense& a) {
    if (!follows(a.to)) {
      return;
    }
    if (a.reagent == "water") {
      wet_.insert(a.to);
    } else {
      only_[a.to] = false;
    }
    push(added(a.reagent, a.volume_ml, a.gently, test_), a.to);
  }
  void take(const bench::Mix& a) {
    if (!follows(a.vessel)) {
      return;
    }
    Deed deed;
    deed.kind = Deed::Kind::Mix;
    deed.seconds = a.seconds;
    deed.manner = a.manner;
    push(std::move(deed), a.vessel);
  }
  void take(const bench::Move& a) {
    if (!follows(a.vessel)) {
      return;
    }
    const bool hot = a.place == bench::Place::Flame || a.place == bench::Place::Bath;
    if (const auto open = hot_.find(a.vessel); open != hot_.end()) {
      open->second.steps.push_back(at_);
      if (!hot) {
        close(a.vessel, open->second, at_);
        hot_.erase(open);
      }
      return;
    }
    if (hot) {
      Deed deed;
      deed.kind = Deed::Kind::Hot;
      deed.in_bath = a.place == bench::Place::Bath;
      deed.steps = {at_};
      deed.begin_s = trail_.points[at_].time_s;
      opened_[a.vessel] = at_;
      hot_.emplace(a.vessel, std::move(deed));
    }
  }
  template <typename A> void take(const A& a) {
    if (auto deed = OtherDeed{}(a)) {
      push(std::move(*deed), "");
    }
  }

  /// A stay in flame or bath is over; `at` is the step that ended it.
  void close(const std::string& vessel, Deed& deed, std::size_t at) {
    const auto& before = trail_.points[opened_.at(vessel)];
    const auto& after = trail_.points[at];
    deed.read_vessel = vessel == work_.vessel;
    deed.boiled_s = after.boiled_s - before.boiled_s;
    deed.seconds = deed.in_bath ? after.bathed_s - before.bathed_s : after.flamed_s - before.flamed_s;
    deed.bath_c = after.bath_c;
    deed.end_s = after.time_s;
    deed.next_step = at + 1;
    deed.urine_inside = std::any_of(deeds_.begin(), deeds_.end(), [&](const Deed& d) {
      return d.kind == Deed::Kind::Add && d.read_vessel == deed.read_vessel && d.what != "reagent";
    });
    deeds_.push_back(deed);
  }

  const Work& work_;
  const Trail& trail_;
  const scoring::TestRule& test_;
  std::size_t at_ = 0;
  std::vector<Deed> deeds_;
  std::map<std::string, Deed> hot_;           ///< Vessels in flame or bath now,
  std::map<std::string, std::size_t> opened_; ///< and since which step.
  std::map<std::string, bool> only_; ///< Vessels that hold specimen, and whether nothing else but water.
  std::set<std::string> wet_;        ///< Vessels with water in them.
};

std::string renamed(const std::string& name, const std::map<std::string, std::string>& names) {
  const auto found = names.find(name);
  return found == names.end() ? name : found->second;
}

void rename(bench::Action& action, const std::map<std::string, std::string>& names) {
  if (auto* blot = std::get_if<bench::BlotPaper>(&action)) {
    blot->paper = renamed(blot->paper, names);
  } else if (auto* drop = std::get_if<bench::DropOn>(&action)) {
    drop->paper = renamed(drop->paper, names);
  } else if (auto* filter = std::get_if<bench::Filter>(&action)) {
    filter->from = renamed(filter->from, names);
    filter->to = renamed(filter->to, names);
  } else if (auto* sulphur = std::get_if<bench::SprinkleSulphur>(&action)) {
    sulphur->vessel = renamed(sulphur->vessel, names);
  } else if (auto* dip = std::get_if<bench::DipPaper>(&action)) {
    dip->vessel = renamed(dip->vessel, names);
  }
}

std::optional<Deed> deed_of(const procedure::RecipeStep& step, const scoring::TestRule& test) {
  using procedure::StepKind;
  Deed deed;
  switch (step.kind) {
  case StepKind::Pour:
    return added(step.from, step.volume_ml, step.gently, test);
  case StepKind::Dispense:
    return added(step.reagent, step.volume_ml, step.gently, test);
  case StepKind::Mix:
    deed.kind = Deed::Kind::Mix;
    deed.seconds = step.seconds;
    deed.manner = step.manner;
    return deed;
  case StepKind::Heat:
  case StepKind::Boil:
  case StepKind::Bath:
    deed.kind = Deed::Kind::Hot;
    deed.in_bath = step.kind == StepKind::Bath;
    deed.bath_c = step.temperature_c;
    deed.seconds = step.seconds;
    deed.boiled_s = step.kind == StepKind::Boil ? step.seconds : 0;
    return deed;
  case StepKind::Wait:
    return std::nullopt;
  case StepKind::Act:
    for (const auto& action : step.acts) {
      if (auto one = std::visit(OtherDeed{}, action)) {
        return one;
      }
    }
    return std::nullopt;
  }
  return std::nullopt;
}

} // namespace

std::vector<Deed> deeds_of(const Work& work, const Trail& trail, const scoring::TestRule& test) {
  return Reader(work, trail, test).read();
}

RecipeDeeds deeds_of(const procedure::Recipe& recipe, const scoring::TestRule& test,
                     const std::map<std::string, std::string>& names) {
  RecipeDeeds all;
  for (const auto& step : recipe.steps) {
    auto deed = deed_of(step, test);
    if (!deed) {
      all.last_wait_s += step.kind == procedure::StepKind::Wait ? step.seconds : 0;
      continue;
    }
    deed->read_vessel = deed->kind == Deed::Kind::Other || step.to == recipe.vessel;
    deed->waited_s = all.last_wait_s;
    all.last_wait_s = 0;
    deed->recipe = step;
    deed->recipe.to = renamed(step.to, names);
    deed->recipe.from = renamed(step.from, names);
    for (auto& action : deed->recipe.acts) {
      rename(action, names);
    }
    all.deeds.push_back(std::move(*deed));
  }
  return all;
}

std::map<std::string, std::string> names_for(const procedure::Recipe& recipe, const Work& work) {
  std::map<std::string, std::string> names{{recipe.vessel, work.vessel}};
  std::string feeds;
  std::string drains;
  for (const auto& step : work.steps) {
    if (const auto* pour = std::get_if<bench::Pour>(&step.action)) {
      feeds =
          pour->to == work.vessel && pour->from != "specimen" && pour->from != "water" ? pour->from : feeds;
    } else if (const auto* filter = std::get_if<bench::Filter>(&step.action)) {
      feeds = filter->from;
      drains = filter->to;
    } else if (const auto* dip = std::get_if<bench::DipPaper>(&step.action)) {
      names["specimen"] = dip->vessel;
    }
  }
  for (const auto& step : recipe.steps) {
    const bool feeder = step.kind == procedure::StepKind::Pour && step.from != "specimen";
    if (feeder && !feeds.empty()) {
      names[step.from] = feeds;
    }
    for (const auto& action : step.acts) {
      if (const auto* filter = std::get_if<bench::Filter>(&action); filter != nullptr && !feeds.empty()) {
        names[filter->from] = feeds;
        names[filter->to] = drains;
      }
    }
  }
  if (names["specimen"].empty()) {
    names.erase("specimen");
  }
  return names;
}

void join_stays(std::vector<Deed>& learner, const std::vector<std::optional<std::size_t>>& answers) {
  const auto answered = [&](std::size_t j) {
    return std::find(answers.begin(), answers.end(), j) != answers.end();
  };
  for (std::size_t from = 0; from < learner.size();) {
    std::size_t to = from + 1;
    while (to < learner.size() && learner[from].kind == Deed::Kind::Hot &&
           learner[to].same_as(learner[from]) && learner[to].in_bath == learner[from].in_bath) {
      ++to;
    }
    std::optional<std::size_t> into;
    for (std::size_t j = from; j < to; ++j) {
      into = !into && answered(j) ? j : into;
    }
    for (std::size_t j = from; into && j < to; ++j) {
      if (answered(j)) {
        into = j;
        continue;
      }
      Deed& all = learner[*into];
      Deed& one = learner[j];
      all.seconds += std::exchange(one.seconds, 0.0);
      all.boiled_s += std::exchange(one.boiled_s, 0.0);
      all.begin_s = std::min(all.begin_s, one.begin_s);
      all.end_s = std::max(all.end_s, one.end_s);
      all.next_step = std::max(all.next_step, one.next_step);
      all.steps.insert(all.steps.end(), one.steps.begin(), one.steps.end());
      std::sort(all.steps.begin(), all.steps.end());
    }
    from = to;
  }
}

std::vector<std::optional<std::size_t>> aligned(const std::vector<Deed>& recipe,
                                                const std::vector<Deed>& learner) {
  const std::size_t n = recipe.size();
  const std::size_t m = learner.size();
  // The longest common run from (i, j) on; anchors count for more than mixing.
  std::vector<std::vector<int>> best(n + 1, std::vector<int>(m + 1, 0));
  const auto gain = [&](std::size_t i, std::size_t j) {
    if (!recipe[i].same_as(learner[j])) {
      return -1;
    }
    constexpr int anchor = 6;
    const int alike = recipe[i].in_bath == learner[j].in_bath ? 1 : 0;
    if (recipe[i].is_anchor()) {
      return anchor + alike;
    }
    // Of two mixings one left out, the other is told by whether it came at once or after a wait.
    const double waited_s = j > 0 ? learner[j].begin_s - learner[j - 1].end_s : 0;
    return 2 + alike + ((waited_s > long_wait_s) == (recipe[i].waited_s > long_wait_s) ? 1 : 0);
  };
  for (std::size_t i = n; i-- > 0;) {
    for (std::size_t j = m; j-- > 0;) {
      const int gained = gain(i, j);
      best[i][j] = std::max({best[i + 1][j], best[i][j + 1], gained > 0 ? gained + best[i + 1][j + 1] : 0});
    }
  }
  std::vector<std::optional<std::size_t>> answers(n);
  for (std::size_t i = 0, j = 0; i < n && j < m;) {
    const int gained = gain(i, j);
    if (gained > 0 && best[i][j] == gained + best[i + 1][j + 1]) {
      answers[i++] = j++;
    } else if (best[i][j] == best[i + 1][j]) {
      ++i;
    } else {
      ++j;
    }
  }
  return answers;
}

} // namespace matula::attribution
