#pragma once

#include "engine/desk/practice.hpp"
#include "engine/render/bench_view.hpp"
#include "engine/window/app.hpp"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::window {

/// What is being answered; nothing of it counts before it is written down.
struct Reply {
  int word = -1; ///< Of a tube's grades; -1 for none yet.
  std::string number;
  std::array<std::string, 5> lines; ///< Of a calculation.
  int verdict = -1;
  int reason = -1;
};

/// Practice and quizzes as the window holds them between frames.
struct PracticeView {
  explicit PracticeView(desk::PracticeRoom the_room) : room(std::move(the_room)) {}

  desk::PracticeRoom room;
  std::vector<desk::SkillOffer> skills;
  std::vector<desk::QuizOffer> quizzes;
  std::vector<desk::QuizOffer> unfinished;
  bool timed = true;
  std::optional<desk::Drill> drill;
  std::optional<desk::QuizRun> quiz;
  appearance::View view;
  float eye_mm = 0;
  Reply reply;
  bool fresh = true;   ///< The unknown on show has not been looked at yet.
  int focus_line = -1; ///< Field of a calculation that gets the keyboard.
  int focus_next = 0;  ///< Frames for which the button that goes on does.
  bool end_wanted = false;
  int focus_strip = 0; ///< Frames for which the strip's first control gets the keyboard.
  bool waits = false;  ///< Something that belongs on the screen was still being made in the last frame.
  std::string trouble; ///< What could not be written down.
  std::optional<bench::Scene> scene;
  std::vector<desk::Beside> beside; ///< Empty when it has to be worked out.
  appearance::View beside_view;
};

/// Whether a drill or a quiz is on the screen.
[[nodiscard]] bool at_practice(const App& app);
/// "drill", "quiz" or "results".
[[nodiscard]] std::string practice_screen(const App& app);
void draw_practice(App& app, float width, float height);
/// How long the window may sleep: while something is being made, or a quiz has a limit, not long.
[[nodiscard]] double practice_rest_s(const App& app);
void run_practice(App& app, double wall_s);
/// What is to be drawn in the bench's place; null for nothing.
[[nodiscard]] const bench::Scene* practice_scene(const App& app);
[[nodiscard]] render::Show practice_show(const App& app);

// The start screen.
void draw_offerings(App& app);
void draw_practice_offers(App& app);

// Parts of the screens.
void draw_question(App& app, const desk::Question& question); ///< Side panel: what is asked, and the answers.
void draw_feedback(App& app, const desk::Feedback& feedback);
/// The tube between its neighbours, in this place; true while they are shown.
bool draw_neighbours(App& app, const render::Rect& area);
void draw_results(App& app, float width, float height);
void draw_cards(App& app); ///< Choice of card and lamp, with their keys.

/// Answers what is on show with what has been entered.
void write_reply(App& app);
/// Puts the entries back to nothing, as a new unknown comes.
void renew(PracticeView& view);
/// Whether every unknown of the quiz has its answer.
[[nodiscard]] bool all_answered(const PracticeView& view);
/// The question on show; null while it is being made.
[[nodiscard]] const desk::Question* question_on_show(PracticeView& view);
/// Back to the start screen.
void leave_practice(App& app);

} // namespace matula::window
