#pragma once

#include "engine/desk/progress_book.hpp"
#include "engine/render/rect.hpp"

#include <optional>
#include <vector>

namespace matula::window {

struct App;

/// The learner's progress as the window holds it between frames.
struct ProgressView {
  std::optional<desk::ProgressBook> book;
  desk::ProgressPage page;
  int group = 0;                   ///< Of page.lines.
  std::vector<desk::Beside> tubes; ///< On the disputed strip of that group; empty while they are made.
};

/// Reads the record anew, when the screen is entered; false with the reason in the message.
[[nodiscard]] bool open_progress(App& app);
/// In the start screen's place below its offerings.
void draw_progress(App& app);
void draw_lines_picture(const desk::OwnLines& group);

} // namespace matula::window
