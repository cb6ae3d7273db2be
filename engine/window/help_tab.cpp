#include "engine/window/entries.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

void draw_help_tab(App& app) {
  heading("Aids");
  draw_text_size(app);
  draw_aids(app);
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled(
      "What is on is written in the sitting. A named colour is that of the screen: it suggests nothing about "
      "an eye, and no real tube is graded by it.");
  if (app.desk->examination()) {
    ImGui::TextUnformatted("In an examination there is no other help.");
    ImGui::PopTextWrapPos();
    return;
  }
  heading("How it is done");
  const bool hidden = is_examination(app);
  for (const HelpTopic& topic : app.help) {
    if (!app.widgets.section(("help." + topic.title).c_str(), topic.title)) {
      continue;
    }
    int number = 1;
    for (const std::string& step : topic.steps) {
      ImGui::Text("%d. %s", number++, step.c_str());
    }
    if (hidden && !topic.tests.empty()) {
      ImGui::TextDisabled("What each grade looks like is not at hand in an examination.");
      continue;
    }
    for (const std::string& grade : topic.grades) {
      point(grade);
    }
    ImGui::TextDisabled("Source: %s", topic.source.c_str());
  }
  ImGui::PopTextWrapPos();
}

} // namespace matula::window
