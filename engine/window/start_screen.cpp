#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

namespace matula::window {

namespace {

void draw_offers(App& app) {
  for (std::size_t i = 0; i < app.offers.size(); ++i) {
    const Offer& offer = app.offers[i];
    const std::string name = "case." + offer.file.stem().string();
    if (!offer.problem.empty()) {
      ImGui::TextWrapped("%s cannot be opened: %s", offer.file.filename().c_str(), offer.problem.c_str());
      continue;
    }
    if (app.widgets.button(name.c_str(), "Open")) {
      const std::filesystem::path file = offer.file; // Opening makes the list anew.
      app.open(file);
      return;
    }
    ImGui::SameLine();
    ImGui::TextUnformatted(offer.title.c_str());
    ImGui::Indent();
    ImGui::PushTextWrapPos(0);
    ImGui::TextDisabled("%s", offer.request.c_str());
    ImGui::PopTextWrapPos();
    ImGui::Unindent();
  }
}

void draw_unfinished(App& app) {
  for (const auto& file : app.unfinished) {
    const std::string name = "resume." + file.stem().string();
    if (app.widgets.button(name.c_str(), "Go on")) {
      const std::filesystem::path chosen = file;
      app.resume(chosen);
      return;
    }
    ImGui::SameLine();
    ImGui::TextUnformatted(file.stem().c_str());
  }
}

} // namespace

void draw_start_screen(App& app, const render::Rect& area) {
  const Pane pane("start", area);
  ImGui::TextUnformatted("Matula: the manual urine examination");
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(app.ground.caution("scope").c_str());
  ImGui::TextUnformatted("Screens differ: never grade a real tube by a colour on a screen. All patients here are invented.");
  ImGui::PopTextWrapPos();
  if (!app.message.empty()) {
    ImGui::TextWrapped("%s", app.message.c_str());
  }
  ImGui::TextUnformatted("Text");
  ImGui::SameLine();
  if (app.widgets.button("text.smaller", "-", app.scale > 1.0F)) {
    app.scale -= 0.25F;
  }
  ImGui::SameLine();
  if (app.widgets.button("text.larger", "+", app.scale < 2.0F)) {
    app.scale += 0.25F;
  }
  if (!app.unfinished.empty()) {
    heading("Sittings not yet handed in");
    draw_unfinished(app);
    if (app.desk) {
      return;
    }
  }
  heading("Cases");
  ImGui::BeginChild("cases");
  draw_offers(app);
  ImGui::EndChild();
}

} // namespace matula::window
