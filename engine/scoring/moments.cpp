#include "engine/scoring/moments.hpp"

#include "engine/assets/world.hpp"
#include "engine/procedure/curve.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/curve_facts.hpp"
#include "engine/scoring/last_use.hpp"
#include "engine/scoring/paper_facts.hpp"
#include "engine/scoring/papers.hpp"
#include "engine/scoring/tube_facts.hpp"
#include "sim/reading/graduation.hpp"

namespace matula::scoring {
namespace {

using appearance::Card;

/// Everything needed while playing through.
struct Player {
  const assets::World& world;
  const scenario::Scenario& scenario;
  const Rulebook& book;
  sitting::Session& session;
  Replay replay{};

  bench::Outcome take(const sitting::Event& event);
  void write(const sitting::Record& record);
  bench::VesselName its_tube(const TestRule& test);
  Moment test_moment(const TestRule& test, bool written);
  void note_figure(Moment& moment, const TestRule& test);
  void note_curve(Moment& moment, const TestRule& test);
  bool note_curve_reading(Moment& moment, const std::string& item);
  void note_look(Moment& moment, const std::string& item);
  void note_gravity();
};

double drop_ml(const matter::Catalogue& catalogue, const TestRule& test) {
  const auto* reagent = test.reagents.empty() ? nullptr : catalogue.find_reagent(test.reagents.front());
  return reagent != nullptr ? reagent->drop_ml : matter::Reagent{}.drop_ml;
}

appearance::Appearance look_on(const bench::State& state, const bench::Setup& setup,
                               const std::string& vessel, Card card) {
  return bench::look(state, setup, vessel, {card, optics::Lamp::Daylight});
}

/// The vessel in which colour and clarity are judged: the jar when specimen was poured into it, else the
/// container.
std::string looked_at_vessel(const bench::State& state) {
  return urine_ml(state, "jar") > 0 && state.vessels.at("jar").column.volume_ml() > 0 ? "jar" : "specimen";
}

/// A curve was read when any of its tubes was.
void Player::note_curve(Moment& moment, const TestRule& test) {
  for (const TubeRead& read : replay.watch.photometer.reads) {
    moment.vessel = role_of(read, test).role == TubeRole::None ? moment.vessel : read.vessel;
  }
  if (!moment.vessel.empty()) {
    moment.facts = curve_facts(test, replay.watch.photometer);
  }
}

/// Whether the item is an absorbance of a curve; then what the photometer last showed for its tube.
bool Player::note_curve_reading(Moment& moment, const std::string& item) {
  const auto* test = book.find_test(item.substr(0, item.find('.')));
  if (test == nullptr || !test->curve) {
    return false;
  }
  for (const auto& one : procedure::curve_items(*test)) {
    if (one.item != item || !one.is_reading()) {
      continue;
    }
    const auto* last = replay.watch.photometer.last(*test, role_of_line(one.line), one.standard);
    if (last != nullptr) {
      moment.vessel = last->vessel;
      moment.figure = last->off_scale ? std::nullopt : std::optional(last->value);
    }
    return true;
  }
  return false;
}

/// The tube of the test, up to date.
bench::VesselName Player::its_tube(const TestRule& test) {
  bench::VesselName vessel = find_tube(session.state(), book, test);
  session.take_up(vessel);
  return vessel;
}

/// What the instrument showed last; a deposit is read on the glass of the very vessel.
void Player::note_figure(Moment& moment, const TestRule& test) {
  const auto& state = session.state();
  if (test.curve) {
    note_curve(moment, test);
    return;
  }
  if (test.number.instrument == "deposit") {
    moment.vessel = its_tube(test);
    if (!moment.vessel.empty()) {
      moment.figure = reading::read_graduation(look_on(state, session.setup(), moment.vessel, Card::White));
      moment.facts = tube_facts(state, moment.vessel, test, replay.watch, drop_ml(world.catalogue, test));
    }
    return;
  }
  const auto shown = replay.watch.shown.find(test.number.instrument);
  if (shown != replay.watch.shown.end()) {
    moment.vessel = shown->second.vessel;
    moment.figure = shown->second.value;
  }
}

Moment Player::test_moment(const TestRule& test, bool written) {
  Moment moment;
  const auto& state = session.state();
  moment.time_s = session.time_s();
  if (test.result == procedure::Result::Number) {
    note_figure(moment, test);
    return moment;
  }
  moment.vessel = its_tube(test);
  if (!moment.vessel.empty()) {
    moment.tube = read_vessel(state, session.setup(), world.thresholds, test.scale, moment.vessel);
  }
  if (test.scale.on_paper()) {
    moment.facts = paper_facts(state, moment.vessel, test, written);
  } else if (!moment.vessel.empty()) {
    moment.facts = tube_facts(state, moment.vessel, test, replay.watch, drop_ml(world.catalogue, test));
  }
  return moment;
}

void Player::note_look(Moment& moment, const std::string& item) {
  session.take_up("specimen");
  session.take_up("jar");
  const auto& state = session.state();
  moment.vessel = looked_at_vessel(state);
  if (item == "colour") {
    moment.word =
        reading::read_colour(look_on(state, session.setup(), moment.vessel, Card::White), world.thresholds);
  } else if (item == "clarity") {
    moment.word = reading::read_clarity(look_on(state, session.setup(), moment.vessel, Card::Printed),
                                        world.thresholds);
  } else {
    bench::State aside = state; // Smelling must not touch the sitting itself.
    moment.odours = bench::perform(aside, session.setup(), bench::Smell{"specimen"}).odours;
  }
}

void Player::note_gravity() {
  replay.gravity = float_facts(replay.watch, session.setup().urinometer.calibration_c);
  replay.float_at_reading = replay.watch.in_specimen;
}

void Player::write(const sitting::Record& record) {
  const auto* test = book.find_test(record.item.substr(0, record.item.find('.')));
  test = test != nullptr && test->item() == record.item ? test : nullptr;
  Moment moment;
  if (test != nullptr) {
    moment = test_moment(*test, true);
  } else if (note_curve_reading(moment, record.item)) {
    moment.value = record.value;
  } else if (record.item == "colour" || record.item == "clarity" || record.item == "odour") {
    note_look(moment, record.item);
    moment.facts["smelled_before_odour"] = replay.watch.smelled ? 1 : 0;
  } else if (record.item == "sg.reading") {
    note_gravity();
  }
  moment.time_s = session.time_s();
  moment.value = record.value;
  if (record.item == "sg.temperature") {
    const auto jar = replay.watch.in_specimen ? replay.watch.in_specimen->vessel : std::string("jar");
    const auto shown = replay.watch.thermometer_c.find(jar);
    if (shown != replay.watch.thermometer_c.end()) {
      moment.thermometer_c = shown->second;
    }
  }
  if (test != nullptr) {
    replay.tests[test->key] = moment;
  }
  replay.written[record.item] = std::move(moment);
}

bench::Outcome Player::take(const sitting::Event& event) {
  session.run_to(event.time_s);
  replay.watch.before(event, session.state(), session.setup(), world.catalogue);
  const auto* record = std::get_if<sitting::Record>(&event.what);
  if (record != nullptr && !session.finished()) {
    write(*record);
  }
  auto outcome = session.take(event);
  replay.watch.after(event, session.state(), outcome, world.catalogue);
  return outcome;
}

} // namespace

reading::GradeReading read_vessel(const bench::State& state, const bench::Setup& setup,
                                  const reading::Thresholds& thresholds, const reading::Scale& scale,
                                  const bench::VesselName& vessel) {
  if (scale.on_paper()) {
    return read_pad(state, setup, scale, vessel);
  }
  const auto white = look_on(state, setup, vessel, Card::White);
  const auto black = look_on(state, setup, vessel, Card::Black);
  const auto printed = look_on(state, setup, vessel, Card::Printed);
  return reading::read_grade(scale, {&white, &black, &printed}, thresholds);
}

Replay play_through(const assets::World& world, const scenario::Scenario& scenario, const Rulebook& book,
                    const std::vector<sitting::Event>& log, sitting::Session& session, const Heard& heard,
                    Idle idle) {
  Player player{world, scenario, book, session, {}};
  LastUse last_use(log);
  for (std::size_t i = 0; i < log.size(); ++i) {
    const auto outcome = player.take(log[i]);
    if (heard) {
      heard(log[i], outcome);
    }
    if (idle == Idle::Laid_aside) {
      last_use.lay_aside(session, i);
    }
  }
  for (const auto& test : book.tests) {
    if (player.replay.tests.count(test.key) == 0) {
      player.replay.tests[test.key] = player.test_moment(test, false);
    }
  }
  if (player.replay.written.count("sg.reading") == 0) {
    player.note_gravity();
  }
  player.replay.safety = safety_facts(player.session.state(), player.replay.watch);
  player.replay.specimen_poured = player.replay.watch.mixed_before_first_pour.has_value();
  return std::move(player.replay);
}

} // namespace matula::scoring
