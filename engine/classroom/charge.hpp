#pragma once

#include "engine/classroom/recording.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/scoring/watch.hpp"

#include <map>
#include <optional>
#include <string>

// Inside this room only.

namespace matula::classroom {

/// Watches from which line on each rule of safety was broken, as the marks found it broken at the end.
class SafetyLines {
public:
  explicit SafetyLines(const scoring::Rulebook& rules) : rules_(rules) {}

  /// How the bench stands once `lines` lines have been taken.
  void look(std::size_t lines, const bench::State& state, const scoring::Watch& watch);
  /// Line (from 0) from which a rule has stayed broken; nothing for one that is kept.
  [[nodiscard]] std::optional<std::size_t> since(const std::string& rule) const;

private:
  const scoring::Rulebook& rules_;
  std::map<std::string, std::size_t> since_;
};

/// Puts every mark of the report at the line it is for: what was written at its (last) writing, the procedure
/// of a test where its result was written, safety where the rule was first broken for good. The rest goes
/// into `elsewhere`.
void charge_marks(Recording& recording, const scoring::Rulebook& rules, const scoring::Report& report,
                  const SafetyLines& safety);

} // namespace matula::classroom
