#pragma once

#include "engine/command/class_verbs.hpp"
#include "engine/command/replayed.hpp"
#include "engine/records/import.hpp"

#include <iosfwd>
#include <memory>

namespace matula::command {

/// A marker and what it stands on.
struct MarkingRoom {
  Ground ground;
  std::unique_ptr<records::Marker> marker;
};

/// Loads the world and the standards. Throws records::Trouble with their problems.
[[nodiscard]] MarkingRoom open_marking_room();

[[nodiscard]] records::Scope scope_of(const ClassScope& asked);
[[nodiscard]] std::int64_t now_s();
[[nodiscard]] std::string day_of(std::int64_t time_s); ///< "2027-09-30", UTC.

/// Progress in lines on `err`: every step of a short lot, some of a long one, and every refusal.
[[nodiscard]] records::Progress progress_on(std::ostream& err);

void print_refused(const std::vector<records::Refused>& refused, std::ostream& err);

} // namespace matula::command
