#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

void draw_request_tab(App& app) {
  const scenario::Brief& brief = app.desk->brief();
  ImGui::PushTextWrapPos(0);
  if (app.widgets.button("request.begin", "Begin: go to Do (D)")) {
    app.tab = Tab::Do;
    app.focus_panel = true;
  }
  ImGui::TextUnformatted(brief.title.c_str());
  heading("Request form");
  ImGui::Text("Patient: %s", brief.patient.c_str());
  ImGui::Text("Request: %s", brief.request.c_str());
  ImGui::Text("Specimen: %s", brief.specimen_note.c_str());
  heading("The bench today");
  ImGui::TextUnformatted(brief.story.c_str());
  heading("Asked for");
  const auto line = [](bool asked, const char* words) {
    if (asked) {
      point(words);
    }
  };
  line(brief.asks_look, "Colour, clarity and odour");
  line(brief.asks_gravity, "Specific gravity by urinometer, corrected");
  for (const scenario::AskedTest& test : brief.tests) {
    line(true, test.request.c_str());
  }
  if (!brief.asks_look && !brief.asks_gravity && brief.tests.empty()) {
    ImGui::TextUnformatted(
        "Nothing at the bench: this case ends at the counter. Decide there, answer what the Worksheet asks, "
        "and hand in.");
  }
  heading("Keys");
  ImGui::TextUnformatted(
      "N, M: next and last vessel. W, B, P: white, black, printed card. R: let time run. C, Q, D, L, S, H: "
      "the tabs (C where there is a counter). T: the top line with the waits and handing in. Arrows move "
      "between controls, Space or Enter "
      "presses one or begins typing in a field, Enter ends it. Esc ends a wait.");
  heading("Bear in mind");
  ImGui::TextUnformatted(app.ground.caution("scope").c_str());
  ImGui::PopTextWrapPos();
}

} // namespace matula::window
