#include "engine/window/author.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/exam_view.hpp"
#include "engine/window/fonts.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/practice_view.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

const char* say_level(const std::string& level) {
  return level == "newcomer" ? "Begin here"
         : level == "first"  ? "First steps"
         : level == "trap"   ? "With a trap"
                             : "Examination";
}

void draw_offer(App& app, const Offer& offer, std::filesystem::path& chosen) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  if (!offer.problem.empty()) {
    ImGui::TableSetColumnIndex(2);
    ImGui::TextWrapped("%s cannot be opened: %s", offer.file.filename().c_str(), offer.problem.c_str());
    return;
  }
  if (app.widgets.button(("case." + offer.file.stem().string()).c_str(), "Open")) {
    chosen = offer.file;
  }
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(say_level(offer.level));
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  const std::string times = offer.done == 1 ? " (done once)" : fmt::format(" (done {} times)", offer.done);
  ImGui::TextWrapped("%s%s", offer.title.c_str(), offer.done > 0 ? times.c_str() : "");
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextWrapped("%s", offer.request.c_str());
}

void draw_offers(App& app) {
  std::filesystem::path chosen; // Opening makes the list anew.
  if (ImGui::BeginTable("offers", 4,
                        ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH |
                            ImGuiTableFlags_SizingFixedFit)) {
    ImGui::TableSetupColumn("");
    ImGui::TableSetupColumn("Level");
    ImGui::TableSetupColumn("Case", ImGuiTableColumnFlags_WidthStretch, 2.0F);
    ImGui::TableSetupColumn("What the ward asks", ImGuiTableColumnFlags_WidthStretch, 3.0F);
    ImGui::TableHeadersRow();
    for (const Offer& offer : app.offers) {
      draw_offer(app, offer, chosen);
    }
    ImGui::EndTable();
  }
  if (!chosen.empty()) {
    app.open(chosen);
  }
}

void draw_unfinished(App& app) {
  std::filesystem::path chosen;
  for (const Unfinished& one : app.unfinished) {
    if (app.widgets.button(("resume." + one.file.stem().string()).c_str(), "Go on")) {
      chosen = one.file;
    }
    ImGui::SameLine();
    ImGui::TextUnformatted(one.title.c_str());
  }
  if (!chosen.empty()) {
    app.resume(chosen);
  }
}

void draw_preface(App& app) {
  push_title_font();
  ImGui::TextUnformatted("Matula: the manual urine examination");
  ImGui::PopFont();
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted(app.ground.caution("scope").c_str());
  ImGui::TextUnformatted(
      "Screens differ: never grade a real tube by a colour on a screen. All patients here are invented.");
  if (!app.message.empty()) {
    ImGui::TextUnformatted(app.message.c_str());
  }
  ImGui::PopTextWrapPos();
  draw_text_size(app);
  ImGui::SameLine();
  draw_aids(app);
}

/// The class's records.
void draw_class_entry(App& app) {
  if (app.widgets.button("class.open", "The class")) {
    open_class(app);
  }
}

} // namespace

void draw_start_screen(App& app, const render::Rect& area) {
  // Lines of text stay short enough to read on a wide window.
  const float width = std::min(area.w, ImGui::GetFontSize() * 66);
  const Pane pane("start", {area.x + (area.w - width) / 2, area.y, width, area.h});
  draw_preface(app);
  if (app.focus_screen > 0) {
    --app.focus_screen;
    app.widgets.focus_next();
  }
  const bool examined = app.exam && app.exam->room; // Nothing is offered beside an opened pack.
  if (!examined) {
    draw_offerings(app);
    heading("For instructors");
    draw_author_entry(app);
    ImGui::SameLine();
    draw_class_entry(app);
  }
  ImGui::BeginChild("cases", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  if (examined || app.offering == Offering::Examination) {
    draw_exam(app);
    ImGui::EndChild();
    return;
  }
  if (app.offering != Offering::Cases) {
    draw_practice_offers(app);
    ImGui::EndChild();
    return;
  }
  if (!app.unfinished.empty()) {
    heading("Sittings not yet handed in");
    draw_unfinished(app);
  }
  if (!app.desk) {
    heading("Cases");
    draw_offers(app);
  }
  ImGui::EndChild();
}

} // namespace matula::window
