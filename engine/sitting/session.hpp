#pragma once

#include "engine/sitting/event.hpp"
#include "sim/bench/scene.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::assets {
struct World;
}
namespace matula::scenario {
struct Scenario;
}
namespace matula::bench {
struct State;
struct Setup;
struct Outcome;
} // namespace matula::bench

namespace matula::sitting {

/// One learner at one scenario, live or in replay. Faces of the program (window, command line) see the bench
/// only through this: scenes, outcomes and the worksheet, never the specimen's truth.
class Session {
public:
  Session(const assets::World& world, const scenario::Scenario& scenario);
  /// The same from a bench that has just begun, `bench::begin` of the scenario's setup, made once for many.
  Session(const assets::World& world, const scenario::Scenario& scenario, const bench::State& fresh);
  ~Session();
  Session(Session&&) noexcept;
  Session& operator=(Session&&) noexcept;
  /// A copy goes on by itself from where the other one stands.
  Session(const Session& other);
  Session& operator=(const Session& other);

  /// Lets the bench live up to `time_s` (never backwards).
  void run_to(double time_s);

  /// Performs or records `event`, after running to its time. Refused events change nothing but are part of
  /// the log.
  bench::Outcome take(const Event& event);

  [[nodiscard]] double time_s() const;
  [[nodiscard]] bool finished() const;
  [[nodiscard]] bench::Scene scene(const appearance::View& view) const;
  [[nodiscard]] appearance::Appearance look(const bench::VesselName& vessel,
                                            const appearance::View& view) const;

  /// Lets a vessel stand outside the bench's time, because nobody will do anything with it for a while; a
  /// vessel in the rack that only stands and cools, else nothing happens. state() then shows its trace and an
  /// empty glass. Everything else here takes it up again by itself.
  void lay_aside(const bench::VesselName& vessel);
  /// Lets it live through what it missed: it is then, to the last bit, as if it had never been aside.
  void take_up(const bench::VesselName& vessel);

  /// Last value of every item on the worksheet.
  [[nodiscard]] const std::map<std::string, std::string>& worksheet() const;

  /// For scoring only.
  [[nodiscard]] const bench::State& state() const;
  [[nodiscard]] const bench::Setup& setup() const;

private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::sitting
