#pragma once

#include "engine/desk/exam_room.hpp"
#include "engine/window/app.hpp"

#include <optional>

namespace matula::window {

/// What the examination screen holds between frames.
struct ExamView {
  std::vector<desk::PackOnOffer> packs;
  std::vector<desk::DeviceOnOffer> devices;
  int pack = 0;
  int device = 0;
  std::string passphrase; ///< As typed; cleared once it has opened a pack.
  std::string session_code;
  std::string refusal; ///< Why the pack was not opened; empty when it was.
  std::optional<desk::ExamRoom> room;
  std::vector<desk::ExamCase> cases;
  std::optional<std::int64_t> begun_s; ///< By the wall clock.
};

/// Where packs and device keys are looked for, and where logs and results go.
[[nodiscard]] std::filesystem::path exam_folder(const App& app);

/// Looks into the folder again.
void open_exam(App& app);

/// How much of the time is left, "37 of 60 min left"; empty while no examination is open or begun.
[[nodiscard]] std::string say_time_left(const App& app);
/// How long the window may sleep so that this goes on being true; negative while nothing is to be said.
[[nodiscard]] double exam_rest_s(const App& app);

void draw_exam(App& app);                                    ///< Part of the start screen.
void draw_closed_screen(App& app, const render::Rect& area); ///< After a case has been handed in.

} // namespace matula::window
