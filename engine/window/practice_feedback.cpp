#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/practice_view.hpp"

#include <imgui.h>

namespace matula::window {

namespace {

constexpr int texture_slot = 2; // 0 is the marks screen's, 1 that of two vessels held side by side.

bool view_pending(const PracticeView& view) {
  return view.drill ? view.drill->beside_pending() : view.quiz->beside_pending();
}

/// The row for the card chosen now; empty while a neighbour is being made.
const std::vector<desk::Beside>& row(PracticeView& view) {
  const bool same = view.beside_view.card == view.view.card && view.beside_view.lamp == view.view.lamp;
  if (view.beside.empty() || !same) {
    view.beside = view.drill ? view.drill->beside(view.view) : view.quiz->beside(view.view);
    view.beside_view = view.view;
  }
  return view.beside;
}

} // namespace

bool draw_neighbours(App& app, const render::Rect& area) {
  // Asked first: what comes ready between the two questions is in the row then, or makes another frame due.
  const bool pending = app.practice->beside.empty() && view_pending(*app.practice);
  const auto& tubes = row(*app.practice);
  const desk::Question* question = question_on_show(*app.practice);
  const bool none = question == nullptr || question->kind != desk::Posed::Tube;
  app.widgets.tell("beside", none ? "none" : tubes.empty() ? "0" : "1");
  if (tubes.empty()) {
    app.practice->waits = app.practice->waits || pending;
    return false;
  }
  app.practice->scene.reset();
  const Pane pane("neighbours", area, ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoFocusOnAppearing);
  std::vector<appearance::Appearance> looks;
  if (ImGui::BeginTable("captions", static_cast<int>(tubes.size()), ImGuiTableFlags_SizingStretchSame)) {
    for (const desk::Beside& tube : tubes) {
      ImGui::TableNextColumn();
      ImGui::TextWrapped("%s", tube.caption.c_str());
      looks.push_back(tube.looks);
    }
    ImGui::EndTable();
  }
  draw_picture(app, texture_slot, looks);
  return true;
}

void draw_feedback(App& app, const desk::Feedback& feedback) {
  PracticeView& view = *app.practice;
  const std::string head = feedback.right ? "Right." : feedback.credit > 0 ? "Not quite." : "Not right.";
  heading(head.c_str());
  app.widgets.tell("right", feedback.right ? "1" : "0");
  const bool is_delivery = view.drill && view.drill->question().kind == desk::Posed::Delivery;
  if (!feedback.right) {
    ImGui::TextWrapped("You wrote: %s", feedback.written.empty() ? "nothing" : feedback.written.c_str());
  }
  for (const std::string& words : feedback.words) {
    if (!words.empty()) {
      ImGui::TextWrapped("%s", words.c_str());
      ImGui::Spacing();
    }
  }
  if (is_delivery) {
    for (const auto& mark : feedback.marks) {
      if (mark.earned < mark.possible && !mark.reason.empty()) {
        ImGui::TextWrapped("%s: %s", mark.label.c_str(), mark.reason.c_str());
        ImGui::Spacing();
      }
    }
  }
  if (view.drill && view.drill->beside_pending()) {
    ImGui::TextDisabled("The tubes beside it are being made ...");
  }
  if (view.focus_next > 0) {
    --view.focus_next;
    app.widgets.focus_next();
  }
  if (view.drill && app.widgets.button("next", "Next (Enter)")) {
    view.drill->next();
    renew(view);
  }
}

} // namespace matula::window
