#pragma once

#include "engine/sitting/session.hpp"
#include "engine/sitting/writer.hpp"

namespace matula::sitting {

/// A sitting that is being written down: every event stands in the log before it happens, so a crash loses at
/// most the one being written. While nothing is done, a tick ({"do":"wait","seconds":0}) keeps the time,
/// every `tick_s` bench seconds.
class Live {
public:
  static constexpr double tick_s = 10;

  [[nodiscard]] static tl::expected<Live, scenario::Problems> begin(const assets::World& world,
                                                                    const scenario::Scenario& scenario,
                                                                    const std::filesystem::path& log_file);

  /// Replays the log and goes on at the bench time it last held. A cut-off last line is taken away; `lost()`
  /// says so.
  [[nodiscard]] static tl::expected<Live, scenario::Problems> resume(const assets::World& world,
                                                                     const scenario::Scenario& scenario,
                                                                     const std::filesystem::path& log_file);

  void run_to(double time_s);
  /// Takes what happens now, at the session's time. Refused without effect when the disk does.
  bench::Outcome take(const decltype(Event::what)& what);

  /// From now on `watch` hears of every line of the log, ticks too, once it is on the disk.
  void watch(LineWatch watch) { writer_.watch(std::move(watch)); }

  [[nodiscard]] const Session& session() const { return session_; }
  [[nodiscard]] const std::string& lost() const {
    return lost_;
  } ///< Piece of a line lost by a crash; empty for none.

private:
  Live(Session session, LogWriter writer) : session_(std::move(session)), writer_(std::move(writer)) {}

  Session session_;
  LogWriter writer_;
  double written_s_ = 0;
  std::string lost_;
};

} // namespace matula::sitting
