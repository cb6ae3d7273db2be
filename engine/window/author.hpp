#pragma once

#include "engine/window/app.hpp"

#include <filesystem>

namespace matula::window {

// Making cases, for instructors: one screen to begin, one with the form beside a live bench.

/// Where cases are written, and looked for besides those that come with the program.
[[nodiscard]] std::filesystem::path own_cases(const App& app);

/// Part of the start screen.
void draw_author_entry(App& app);

/// Whether one of its screens is on show.
[[nodiscard]] bool at_author(const App& app);
/// "author.begin" or "author".
[[nodiscard]] std::string author_screen(const App& app);
void draw_author(App& app, float width, float height);
/// How long the window may sleep: while tubes are being done, not long.
[[nodiscard]] double author_rest_s(const App& app);

} // namespace matula::window
