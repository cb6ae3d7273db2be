#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/paper.hpp"
#include "engine/window/practice_view.hpp"

#include <fmt/format.h>
#include <imgui.h>

#include <cmath>

namespace matula::window {

namespace {

/// A button for every unknown; an exclamation mark what was not right. They stand in the strip with the way
/// back, also while an unknown is being made: the arrow keys do not cross from one pane into another.
void draw_places(App& app) {
  PracticeView& view = *app.practice;
  for (int i = 0; i < view.quiz->count(); ++i) {
    const bool right = view.quiz->feedback(i).right;
    const std::string label = fmt::format("{}{}", i + 1, right ? "" : " !");
    flow(width_of(label.c_str()));
    const bool open = view.quiz->place() == i;
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(open ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(fmt::format("result.{}", i + 1).c_str(), label)) {
      view.quiz->go_to(i);
      renew(view);
    }
    ImGui::PopStyleColor();
  }
}

void draw_given(const desk::Question& question) {
  const Paper paper("WORKSHEET", ImGui::GetContentRegionAvail().x);
  for (const auto& [name, value] : question.given) {
    paper.line(name.c_str(), value.c_str(), "");
  }
  paper.words(question.rule.c_str());
}

/// Two rows of buttons: fourteen places and the way back are wider than a small window with large text.
float strip_height(const App& app) {
  const float rows = app.aids.text_scale > 1.3F ? 2 : 1;
  return std::floor(ImGui::GetFrameHeightWithSpacing() * rows + ImGui::GetStyle().WindowPadding.y * 2);
}

/// True when the screen was left.
bool draw_results_strip(App& app, const render::Rect& area) {
  const Pane pane("strip", area);
  if (app.focus_screen > 0) {
    --app.focus_screen;
    app.widgets.focus_next();
  }
  if (app.widgets.button("results.close", "Back to the start (Esc)")) {
    leave_practice(app);
    return true;
  }
  if (app.practice->quiz->marked()) {
    draw_places(app);
  }
  return false;
}

/// The unknown again, and why; true when what is below it is a picture.
void draw_one(App& app, const render::Rect& area) {
  PracticeView& view = *app.practice;
  const desk::Question* question = question_on_show(view);
  if (question == nullptr) {
    view.waits = true;
    const Pane pane("one", area, ImGuiWindowFlags_NoFocusOnAppearing);
    ImGui::TextUnformatted("It is being made again ...");
    return;
  }
  app.widgets.tell("place", std::to_string(view.quiz->place() + 1));
  const float words_h = std::floor(area.h * (0.34F + 0.08F * app.aids.text_scale));
  {
    const Pane pane("one", {area.x, area.y, area.w, words_h}, ImGuiWindowFlags_NoFocusOnAppearing);
    ImGui::TextWrapped("%d. %s", view.quiz->place() + 1, question->title.c_str());
    ImGui::BeginChild("why", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
    if (question->kind == desk::Posed::Tube) {
      draw_cards(app);
    }
    draw_feedback(app, view.quiz->feedback(view.quiz->place()));
    ImGui::EndChild();
  }
  const render::Rect rest{area.x, area.y + words_h, area.w, area.h - words_h};
  if (draw_neighbours(app, rest)) {
    return;
  }
  if (question->kind == desk::Posed::Delivery) {
    draw_delivery(*question->delivery, rest);
    return;
  }
  const Pane pane("rest", rest, ImGuiWindowFlags_NoFocusOnAppearing);
  if (question->kind == desk::Posed::Sum) {
    draw_given(*question);
  } else if (question->kind == desk::Posed::Float) {
    ImGui::TextWrapped("%s", question->prompt.c_str());
  } else {
    ImGui::TextUnformatted("The tubes beside it are being made ...");
  }
}

} // namespace

void draw_results(App& app, float width, float height) {
  PracticeView& view = *app.practice;
  const float left = std::floor(width * 0.5F);
  const bool marked = view.quiz->marked();
  app.widgets.tell("marked", marked ? "1" : "0");
  const float top = strip_height(app);
  if (draw_results_strip(app, {0, 0, width, top})) {
    return;
  }
  {
    const Pane pane("results", {0, top, left, height - top}, ImGuiWindowFlags_NoFocusOnAppearing);
    ImGui::TextWrapped("%s", view.quiz->title().c_str());
    for (const std::string& words : {view.trouble, view.quiz->trouble()}) {
      if (!words.empty()) {
        ImGui::TextWrapped("%s", words.c_str());
      }
    }
    if (!marked) {
      view.waits = true;
      ImGui::TextUnformatted("What was left open is being made, to be shown with the rest ...");
      return;
    }
    draw_ledgers(view.quiz->report());
  }
  draw_one(app, {left, top, width - left, height - top});
}

} // namespace matula::window
