#include "engine/window/flow.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <array>

namespace matula::window {

namespace {

const ImVec4 title_colour{0.60F, 0.84F, 0.81F, 1.0F};
const ImVec4 remark_colour{1.0F, 0.75F, 0.55F, 1.0F};

struct TabName {
  const char* key;
  Tab tab;
  const char* button;
};
constexpr std::array<TabName, 5> tab_names{{{"reception", Tab::Reception, "Show me: Reception"},
                                            {"request", Tab::Request, "Show me: Request"},
                                            {"do", Tab::Do, "Show me: Do"},
                                            {"papers", Tab::Papers, "Show me: Papers"},
                                            {"worksheet", Tab::Worksheet, "Show me: Worksheet"}}};

/// A way to the tab the control is in, when another one is open.
void draw_way(App& app, const std::string& show) {
  for (const TabName& name : tab_names) {
    if (show == name.key && app.tab != name.tab) {
      if (app.widgets.button("guide.show", name.button)) {
        app.tab = name.tab;
        app.focus_panel = true;
      }
      flow(width_of("Put the guide away"));
    }
  }
}

void draw_step(App& app, const desk::GuideNow& now) {
  const bool said = now.help == guide::Help::EachStep || app.guide_asked == now.steps_done + 1;
  if (!said) {
    if (now.help == guide::Help::Goal) {
      ImGui::TextUnformatted(now.goal.c_str());
    }
    if (app.widgets.button("guide.step", "What is the next step?")) {
      app.guide_asked = now.steps_done + 1;
    }
    flow(width_of("Put the guide away"));
    return;
  }
  ImGui::TextUnformatted(now.say.c_str());
  ImGui::TextDisabled("%s", now.why.c_str());
  draw_way(app, now.show);
}

} // namespace

void draw_guide_box(App& app) {
  const auto now = app.desk->guide();
  if (!now) {
    return;
  }
  if (!app.guide_open) {
    if (app.widgets.button("guide.open", "Guide me through this case")) {
      app.guide_open = true;
      app.use_aid("aid.guide", "yes");
    }
    ImGui::Separator();
    return;
  }
  ImGui::PushTextWrapPos(0);
  const bool over = now->say.empty();
  ImGui::TextColored(
      title_colour, "%s",
      over ? "All done" : fmt::format("{}  ({} of {})", now->part, now->steps_done + 1, now->steps).c_str());
  if (!now->welcome.empty()) {
    ImGui::TextUnformatted(now->welcome.c_str());
  }
  if (!now->remark.empty()) {
    ImGui::TextColored(remark_colour, "%s", now->remark.c_str());
  }
  if (over) {
    ImGui::TextUnformatted(now->goal.c_str());
  } else {
    draw_step(app, *now);
  }
  ImGui::PopTextWrapPos();
  if (app.widgets.button("guide.away", "Put the guide away")) {
    app.guide_open = false;
    app.use_aid("aid.guide", "no");
  }
  ImGui::Separator();
  app.widgets.tell("guide", fmt::format("{} of {}: {}", now->steps_done, now->steps, now->say));
}

} // namespace matula::window
