#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

void draw_help_tab(App& app) {
  ImGui::PushTextWrapPos(0);
  for (const HelpTopic& topic : app.help) {
    if (!app.widgets.section(("help." + topic.title).c_str(), topic.title)) {
      continue;
    }
    int number = 1;
    for (const std::string& step : topic.steps) {
      ImGui::Text("%d. %s", number++, step.c_str());
    }
    for (const std::string& grade : topic.grades) {
      ImGui::BulletText("%s", grade.c_str());
    }
    ImGui::TextDisabled("Source: %s", topic.source.c_str());
  }
  ImGui::PopTextWrapPos();
}

} // namespace matula::window
