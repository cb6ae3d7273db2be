#pragma once

#include "engine/classroom/playback.hpp"
#include "engine/render/bench_view.hpp"

#include <optional>
#include <string>

namespace matula::window {

struct App;

enum class ReplayTab { Line, Lines, Worksheet, Papers };

/// A stored sitting on the bench, as the window holds it between frames.
struct ReplayView {
  explicit ReplayView(classroom::Playback of) : playback(std::move(of)) {}

  classroom::Playback playback;
  ReplayTab tab = ReplayTab::Line;
  bool as_the_student = true; ///< Looked at as the student did; else as set below.
  bench::VesselName vessel = "specimen";
  appearance::View view;
  double to_line = 1;  ///< As typed.
  double speed = 1;    ///< The same.
  bool changed = true; ///< The scene has to be made anew.
  std::optional<bench::Scene> scene;
  double seen_at_s = -1;
  std::optional<std::size_t> scrolled_to; ///< Line the list was last brought to.
  int focus_strip = 3;                    ///< Frames for which the bar's first control gets the keyboard.
  int focus_panel = 0;                    ///< The same of the panel.
  double wall_s = 0;
};

void begin_replay(App& app);
void draw_replay(App& app, float width, float height);
void draw_replay_panel(App& app); ///< The line in words, all lines, the worksheet.
void run_replay(App& app, double wall_s);
[[nodiscard]] bool replay_moves(const App& app);
/// What is to be drawn in the bench's place; null for nothing.
[[nodiscard]] const bench::Scene* replay_scene(const App& app);
[[nodiscard]] render::Show replay_show(const App& app);

} // namespace matula::window
