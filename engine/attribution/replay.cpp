#include "engine/attribution/replay.hpp"

#include "engine/scoring/by_the_book.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace matula::attribution {
namespace {

constexpr double longest_warming_s = 4 * 3600;
constexpr double warm_enough_k = 1; // Nobody waits for the last degree.

/// Vessel that an action is about; empty when it is about none.
struct About {
  std::string operator()(const bench::Pour& a) const { return a.to; }
  std::string operator()(const bench::Dispense& a) const { return a.to; }
  std::string operator()(const bench::Mix& a) const { return a.vessel; }
  std::string operator()(const bench::Move& a) const { return a.vessel; }
  template <typename A> std::string operator()(const A& /*a*/) const { return ""; }
};

/// Everything that is put right, laid out by step.
struct Plan {
  std::map<std::size_t, double> scale;
  std::map<std::size_t, bool> gently;
  std::map<std::size_t, double> wait;
  std::map<std::size_t, const Change*> bottle;
  std::map<std::size_t, std::vector<const Change*>> before; ///< To do before a step.
  std::map<std::size_t, const Change*> replaced;            ///< By first step.
  std::vector<bool> dropped;
  std::vector<bool> undiluted;
  std::vector<bool> wiped;

  Plan(std::size_t steps, const std::vector<const Deviation*>& right)
      : dropped(steps, false), undiluted(steps, false), wiped(steps, false) {
    for (const Deviation* deviation : right) {
      std::for_each(deviation->changes.begin(), deviation->changes.end(),
                    [this](const Change& change) { add(change); });
    }
    for (auto& [step, changes] : before) {
      std::stable_sort(changes.begin(), changes.end(),
                       [](const Change* a, const Change* b) { return a->order < b->order; });
    }
  }

private:
  void add(const Change& change) {
    switch (change.kind) {
    case Change::Kind::Replace:
      replaced.emplace(change.steps.front(), &change);
      mark(dropped, change);
      return;
    case Change::Kind::Drop:
      return mark(dropped, change);
    case Change::Kind::Undiluted:
      return mark(undiluted, change);
    case Change::Kind::Bottle:
      for (const std::size_t step : change.steps) {
        bottle[step] = &change;
      }
      return;
    case Change::Kind::Wiped:
      return mark(wiped, change);
    case Change::Kind::Scale:
      for (const std::size_t step : change.steps) {
        scale.emplace(step, 1.0).first->second *= change.value;
      }
      return;
    case Change::Kind::Gently:
      for (const std::size_t step : change.steps) {
        gently[step] = change.flag;
      }
      return;
    case Change::Kind::Wait:
      wait[change.at] = change.value;
      return;
    case Change::Kind::Insert:
    case Change::Kind::RoomWarm:
      before[change.at].push_back(&change);
      return;
    }
  }
  static void mark(std::vector<bool>& marks, const Change& change) {
    for (const std::size_t step : change.steps) {
      marks.at(step) = true;
    }
  }
};

/// Plays one work.
class Player {
public:
  Player(const Bench& bench, const Work& work, const Plan& plan, Trail* trail)
      : setup_(*bench.setup), clean_(bench.fresh), work_(work), plan_(plan), trail_(trail),
        state_(bench.fresh) {
    state_.gloves = true;
    state_.goggles = true;
  }

  bench::State play() {
    for (std::size_t i = 0; i < work_.steps.size(); ++i) {
      come_to(i, work_.steps[i].wait_s);
      if (const auto found = plan_.replaced.find(i); found != plan_.replaced.end()) {
        do_in_place(*found->second);
      }
      if (!plan_.dropped[i]) {
        step(i);
      } else {
        settle(work_.steps[i]);
      }
    }
    come_to(work_.steps.size(), work_.last_wait_s);
    return std::move(state_);
  }

private:
  /// Waits, and does what is to be done before the step.
  void come_to(std::size_t i, double wait_s) {
    const auto found = plan_.before.find(i);
    const auto insert = [&](bool first) {
      if (found == plan_.before.end()) {
        return;
      }
      for (const Change* change : found->second) {
        if (change->first == first) {
          do_before(*change);
        }
      }
    };
    const double since_s = state_.time_s;
    insert(true);
    const auto set = plan_.wait.find(i);
    if (!(i < busy_until_)) { // Within what was replaced by the recipe's own step no time passes twice.
      bench::advance(state_, setup_, set == plan_.wait.end() ? wait_s : set->second);
    }
    insert(false);
    note(i, since_s);
  }

  void note(std::size_t i, double since_s) {
    if (trail_ == nullptr) {
      return;
    }
    Trail::Point point;
    point.since_s = since_s;
    point.time_s = state_.time_s;
    point.bath_c = state_.bath_c;
    point.specimen_c = column::mean_temperature_c(state_.vessels.at("specimen").column);
    const std::string about =
        i < work_.steps.size() ? std::visit(About{}, work_.steps[i].action) : work_.vessel;
    if (const auto vessel = state_.vessels.find(about); vessel != state_.vessels.end()) {
      const auto& trace = vessel->second.trace;
      point.boiled_s = trace.boiling_seconds;
      point.flamed_s = trace.seconds_in_flame;
      point.bathed_s = trace.seconds_in_bath;
    }
    trail_->points.push_back(point);
  }

  void do_before(const Change& change) {
    if (change.kind == Change::Kind::RoomWarm) {
      warm(change.vessel);
    } else {
      do_recipe(change.recipe);
    }
  }

  void do_in_place(const Change& change) {
    busy_until_ = std::max(busy_until_, change.steps.back() + 1);
    do_recipe(change.recipe);
  }

  /// The recipe's hand lights the flame and puts it out; the learner's goes on as it was.
  void do_recipe(const procedure::RecipeStep& recipe) {
    const bool lit = state_.flame_on;
    const double bath_c = state_.bath_target_c;
    const double warming = state_.bath_warming_c_per_s;
    (void)scoring::do_step(state_, setup_, recipe); // Refused: then it does not help, and is not blamed.
    state_.flame_on = lit;
    state_.bath_target_c = bath_c;
    state_.bath_warming_c_per_s = warming;
  }

  void warm(const std::string& name) {
    constexpr double look_every_s = 60;
    const auto off_k = [&] {
      return std::abs(column::mean_temperature_c(state_.vessels.at(name).column) - setup_.room_c);
    };
    for (double waited = 0; waited < longest_warming_s && off_k() > warm_enough_k; waited += look_every_s) {
      bench::advance(state_, setup_, look_every_s);
    }
  }

  /// What a hand does at the burner and the bath while a tube is left out stays done.
  void settle(const Step& step) {
    if (const auto* flame = std::get_if<bench::LightFlame>(&step.action)) {
      (void)bench::perform(state_, setup_, *flame);
    }
  }

  void step(std::size_t i) {
    const Step& step = work_.steps[i];
    state_.random_counter = step.random_counter;
    state_.papers_used = step.papers_used;
    bench::Action action = step.action;
    if (auto* pour = std::get_if<bench::Pour>(&action)) {
      adjust(*pour, i);
      (void)bench::perform(state_, setup_, *pour);
      put_away(pour->to);
      return;
    }
    if (auto* dispense = std::get_if<bench::Dispense>(&action)) {
      adjust(*dispense, i);
    } else if (auto* dip = std::get_if<bench::DipPaper>(&action)) {
      dip->seconds *= scale(i);
    } else if (auto* drop = std::get_if<bench::DropOn>(&action)) {
      drop->drops *= scale(i);
    } else if (auto* lowered = std::get_if<bench::Float>(&action)) {
      lowered->wiped = lowered->wiped || plan_.wiped[i];
    }
    (void)bench::perform(state_, setup_, action);
  }

  [[nodiscard]] double scale(std::size_t i) const {
    const auto found = plan_.scale.find(i);
    return found == plan_.scale.end() ? 1.0 : found->second;
  }

  template <typename A> void adjust(A& action, std::size_t i) const {
    action.volume_ml *= scale(i);
    const auto gently = plan_.gently.find(i);
    action.gently = gently == plan_.gently.end() ? action.gently : gently->second;
    if constexpr (std::is_same_v<A, bench::Dispense>) {
      if (const auto bottle = plan_.bottle.find(i); bottle != plan_.bottle.end()) {
        action.reagent = bottle->second->vessel;
        action.volume_ml *= bottle->second->value;
      }
    }
    if constexpr (std::is_same_v<A, bench::Pour>) {
      action.from = plan_.undiluted[i] ? "specimen" : action.from;
      const auto from = state_.vessels.find(action.from);
      if (from != state_.vessels.end()) { // More than is there cannot be asked for.
        action.volume_ml = std::min(action.volume_ml, from->second.column.volume_ml());
      }
    }
  }

  /// What went into a vessel that does not bear on this tube is out of the way at once.
  void put_away(const std::string& to) {
    if (work_.vessels.count(to) > 0 || to == "specimen" || to == "water") {
      return;
    }
    const auto clean = clean_.vessels.find(to);
    if (clean != clean_.vessels.end()) {
      state_.vessels[to] = clean->second;
      state_.vessels[to].lived_ticks = state_.ticks;
    }
  }

  const bench::Setup& setup_;
  const bench::State& clean_;
  const Work& work_;
  const Plan& plan_;
  Trail* trail_;
  bench::State state_;
  std::size_t busy_until_ = 0;
};

} // namespace

bench::State replay(const Bench& bench, const Work& work, const std::vector<const Deviation*>& right,
                    Trail* trail) {
  const Plan plan(work.steps.size(), right);
  return Player(bench, work, plan, trail).play();
}

} // namespace matula::attribution
