#include "engine/window/fonts.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/paper.hpp"
#include "engine/window/practice_view.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>

namespace matula::window {

namespace {

bool pressed(int key, bool again = false) {
  return ImGui::IsKeyPressed(key, again);
}

void set_card(PracticeView& view, appearance::Card card) {
  view.view.card = card;
  view.scene.reset();
}

/// Keys that work on both screens; of the eye also while a number is typed.
void handle_view_keys(App& app) {
  PracticeView& view = *app.practice;
  constexpr float highest_mm = 40;
  if (pressed(GLFW_KEY_F3, true)) {
    view.eye_mm = std::min(view.eye_mm + 1, highest_mm);
  }
  if (pressed(GLFW_KEY_F2, true)) {
    view.eye_mm = std::max(view.eye_mm - 1, -highest_mm);
  }
  if (ImGui::GetIO().WantTextInput) {
    return;
  }
  if (pressed(GLFW_KEY_W)) {
    set_card(view, appearance::Card::White);
  }
  if (pressed(GLFW_KEY_B)) {
    set_card(view, appearance::Card::Black);
  }
  if (pressed(GLFW_KEY_T)) {
    view.focus_strip = 1;
  }
  if (pressed(GLFW_KEY_P)) {
    set_card(view, appearance::Card::Printed);
  }
}

std::string say_where(PracticeView& view) {
  if (view.drill) {
    return fmt::format("Practice: {} answered so far", view.drill->answered());
  }
  const auto left = view.quiz->left_s();
  return fmt::format("{}: unknown {} of {}, {} answered{}", view.quiz->title(), view.quiz->place() + 1,
                     view.quiz->count(), view.quiz->answered(), left ? "; " + say_time(*left) + " left" : "");
}

void end_quiz(App& app) {
  (void)app.practice->quiz->finish(); // Its trouble stands with the results.
  app.practice->trouble.clear();
  renew(*app.practice);
  app.focus_screen = 3;
}

/// True when the quiz was ended or left.
bool draw_quiz_buttons(App& app) {
  PracticeView& view = *app.practice;
  const bool all = all_answered(view);
  if (view.end_wanted) {
    if (app.widgets.button("quiz.end.yes", "Yes, end and mark")) {
      end_quiz(app);
      return true;
    }
    ImGui::SameLine();
    if (app.widgets.button("quiz.end.no", "No")) {
      view.end_wanted = false;
    }
    ImGui::SameLine();
    ImGui::Text("%d not answered.", view.quiz->count() - view.quiz->answered());
    return false;
  }
  if (app.widgets.button("quiz.end", "End the quiz")) {
    view.end_wanted = !all;
    view.focus_strip = 1; // The question takes this button's place in the next frame.
    if (all) {
      end_quiz(app);
      return true;
    }
  }
  ImGui::SameLine();
  if (app.widgets.button("quiz.later", "Leave this one for later",
                         view.quiz->answered() + 1 < view.quiz->count())) {
    view.quiz->go_on();
    renew(view);
  }
  ImGui::SameLine();
  if (app.widgets.button("practice.leave", "Leave, go on another time (Esc)")) {
    leave_practice(app);
    return true;
  }
  return false;
}

/// True when the screen was left.
bool draw_practice_strip(App& app, const render::Rect& area) {
  PracticeView& view = *app.practice;
  const Pane pane("strip", area);
  ImGui::TextUnformatted(say_where(view).c_str());
  ImGui::SameLine(area.w - ImGui::GetFontSize() * 9);
  draw_text_size(app);
  if (view.focus_strip > 0) {
    --view.focus_strip;
    app.widgets.focus_next();
  }
  if (view.quiz) {
    return draw_quiz_buttons(app);
  }
  if (app.widgets.button("practice.leave", "Leave (Esc)")) {
    leave_practice(app);
    return true;
  }
  return false;
}

void draw_sheet(const desk::Question& question, const render::Rect& area) {
  const Pane pane("sheet", area, ImGuiWindowFlags_NoFocusOnAppearing);
  const Paper paper("WORKSHEET  ·  Saint Brannoc's Teaching Hospital (invented)",
                    std::min(ImGui::GetContentRegionAvail().x, ImGui::GetFontSize() * 34));
  for (const auto& [name, value] : question.given) {
    paper.line(name.c_str(), value.c_str(), "");
  }
  ImGui::Spacing();
  paper.words(question.rule.c_str());
}

void draw_words(const render::Rect& area, const char* words) {
  const Pane pane("waiting", area, ImGuiWindowFlags_NoFocusOnAppearing);
  ImGui::SetCursorPos({area.w * 0.3F, area.h * 0.45F});
  ImGui::TextUnformatted(words);
}

/// A click anywhere on the picture does nothing, but the colour under the pointer may be asked for.
void draw_picture_pane(App& app, const render::Rect& area) {
  const Pane pane("picture", area,
                  ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoNav |
                      ImGuiWindowFlags_NoFocusOnAppearing);
  ImGui::SetCursorScreenPos({area.x, area.y});
  ImGui::InvisibleButton("picture", {area.w, area.h});
  if (ImGui::IsItemHovered()) {
    draw_hue_tip(app);
  }
}

void draw_thing(App& app, const desk::Question& question, const render::Rect& area) {
  PracticeView& view = *app.practice;
  if (question.kind == desk::Posed::Delivery) {
    draw_delivery(*question.delivery, area);
  } else if (question.kind == desk::Posed::Sum) {
    draw_sheet(question, area);
  } else {
    if (!view.scene) {
      view.scene = view.drill ? view.drill->scene(view.view) : view.quiz->scene(view.view);
    }
    draw_picture_pane(app, area);
  }
}

void draw_side(App& app, const desk::Question& question, const render::Rect& area) {
  const Pane pane("panel", area);
  ImGui::BeginChild("question", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  push_title_font();
  ImGui::TextWrapped("%s", question.title.c_str());
  ImGui::PopFont();
  if (app.practice->drill && app.practice->drill->feedback()) {
    draw_feedback(app, *app.practice->drill->feedback());
  } else {
    draw_question(app, question);
  }
  ImGui::EndChild();
}

void draw_foot(App& app, const desk::Question* question, const render::Rect& area) {
  const Pane pane("message", area);
  ImGui::PushTextWrapPos(0);
  if (!app.practice->trouble.empty()) {
    ImGui::TextUnformatted(app.practice->trouble.c_str());
  }
  if (question != nullptr && (question->kind == desk::Posed::Tube || question->kind == desk::Posed::Float)) {
    ImGui::PopTextWrapPos();
    draw_cards(app);
    ImGui::PushTextWrapPos(0);
    ImGui::TextUnformatted(
        "Screens differ: never grade a real tube by a colour on a screen. T leads to the buttons above.");
  } else {
    ImGui::TextDisabled("T leads to the buttons above.");
  }
  ImGui::PopTextWrapPos();
}

/// Time is up, or Escape was pressed.
bool ends_by_itself(App& app) {
  PracticeView& view = *app.practice;
  if (view.quiz && view.quiz->left_s() && *view.quiz->left_s() <= 0) {
    end_quiz(app);
    view.trouble = "The time was up.";
    return true;
  }
  if (pressed(GLFW_KEY_ESCAPE) && !ImGui::GetIO().WantTextInput) {
    leave_practice(app);
    return true;
  }
  return false;
}

} // namespace

void draw_cards(App& app) {
  PracticeView& view = *app.practice;
  struct Row {
    const char* name;
    const char* label;
    appearance::Card card;
  };
  constexpr Row rows[] = {{"card.white", "white (W)", appearance::Card::White},
                          {"card.black", "black (B)", appearance::Card::Black},
                          {"card.printed", "printed card (P)", appearance::Card::Printed}};
  for (const Row& row : rows) {
    if (app.widgets.choice(row.name, row.label, view.view.card == row.card)) {
      set_card(view, row.card);
    }
    ImGui::SameLine();
  }
  bool lamp = view.view.lamp == optics::Lamp::Indoor;
  if (app.widgets.tick("lamp.indoor", "by lamp light", lamp)) {
    view.view.lamp = lamp ? optics::Lamp::Indoor : optics::Lamp::Daylight;
    view.scene.reset();
  }
}

void draw_practice(App& app, float width, float height) {
  PracticeView& view = *app.practice;
  view.waits = false;
  if (view.quiz && view.quiz->finished()) {
    if (pressed(GLFW_KEY_ESCAPE)) {
      leave_practice(app);
      return;
    }
    handle_view_keys(app);
    draw_results(app, width, height);
    return;
  }
  if (ends_by_itself(app)) {
    return;
  }
  handle_view_keys(app);
  const Regions where = regions(width, height, app.aids.text_scale);
  if (draw_practice_strip(app, where.strip)) {
    return;
  }
  if (all_answered(view)) {
    app.widgets.tell("answered", std::to_string(view.quiz->answered()));
    view.scene.reset();
    draw_words({0, where.bench.y, width, where.bench.h},
               "Every unknown has its answer: end the quiz, and see.");
    draw_foot(app, nullptr, where.message);
    return;
  }
  const desk::Question* question = question_on_show(view);
  app.widgets.tell("ready", question != nullptr ? "1" : "0");
  app.widgets.tell("answered", std::to_string(view.drill ? view.drill->answered() : view.quiz->answered()));
  if (question == nullptr) {
    view.waits = true;
    view.scene.reset();
    draw_words({0, where.bench.y, width, where.bench.h}, "The next unknown is being made on the bench ...");
    draw_foot(app, nullptr, where.message);
    return;
  }
  const desk::Question asked = *question; // What is drawn may bring the next one.
  if (!draw_neighbours(app, where.bench)) {
    draw_thing(app, asked, where.bench);
  }
  draw_foot(app, &asked, where.message);
  draw_side(app, asked, where.panel);
}

} // namespace matula::window
