#include "engine/desk/remember.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/progress_view.hpp"

#include <algorithm>

namespace matula::window {

namespace {

constexpr int texture_slot = 3; // 0 marks, 1 two tubes at the bench, 2 practice.

void draw_tomorrow(const desk::ProgressPage& page) {
  heading("What to change tomorrow");
  if (page.tomorrow.empty()) {
    ImGui::TextWrapped(
        "Your answers so far show nothing that has to change. Practise, take a quiz, work a case: every "
        "first answer is kept.");
  }
  for (const std::string& words : page.tomorrow) {
    point(words);
  }
}

void draw_skills(const desk::ProgressPage& page) {
  heading("Skills");
  if (!ImGui::BeginTable("skills", 2, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("skill", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  ImGui::TableSetupColumn("words", ImGuiTableColumnFlags_WidthStretch, 2.4F);
  for (const desk::SkillProgress& skill : page.skills) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextWrapped("%s", skill.title.c_str());
    ImGui::TextDisabled("%d answered", skill.answers);
    ImGui::TableNextColumn();
    for (const std::string* words : {&skill.state, &skill.trend, &skill.graded, &skill.due}) {
      if (!words->empty()) {
        ImGui::TextWrapped("%s", words->c_str());
      }
    }
  }
  ImGui::EndTable();
}

void draw_groups(App& app, ProgressView& view) {
  bool first = true;
  for (int i = 0; i < static_cast<int>(view.page.lines.size()); ++i) {
    const desk::OwnLines& group = view.page.lines[static_cast<std::size_t>(i)];
    if (!first) {
      flow(width_of(group.title.c_str()) + ImGui::GetFrameHeight());
    }
    first = false;
    if (app.widgets.choice(("lines." + group.key).c_str(), group.title, view.group == i)) {
      view.group = i;
      view.tubes.clear();
    }
  }
}

void draw_tubes_between(App& app, ProgressView& view, const desk::OwnLines& group) {
  if (view.tubes.empty()) {
    view.tubes = view.book->disputed_tubes(group, {group.card, optics::Lamp::Daylight});
  }
  ImGui::TextWrapped("Tubes between your line and the practised reader's:");
  if (ImGui::BeginTable("between", std::max(static_cast<int>(view.tubes.size()), 1),
                        ImGuiTableFlags_SizingStretchSame)) {
    for (const desk::Beside& tube : view.tubes) {
      ImGui::TableNextColumn();
      ImGui::TextWrapped("%s", tube.caption.c_str());
    }
    ImGui::EndTable();
  }
  std::vector<appearance::Appearance> looks;
  for (const desk::Beside& tube : view.tubes) {
    looks.push_back(tube.looks);
  }
  draw_picture(app, texture_slot, looks);
}

void draw_group(App& app, ProgressView& view) {
  heading("Where your eye draws the line");
  if (view.page.lines.empty()) {
    ImGui::TextWrapped("Ten readings of one kind of tube show whether you read higher or lower than a "
                       "practised reader; forty show "
                       "each line between two grades.");
    return;
  }
  draw_groups(app, view);
  const desk::OwnLines& group = view.page.lines[static_cast<std::size_t>(view.group)];
  ImGui::Text("%d readings", group.readings);
  if (!group.lines.empty()) {
    draw_lines_picture(group);
  }
  for (const std::string& words : group.sentences) {
    ImGui::TextWrapped("%s", words.c_str());
  }
  if (group.disputed && !group.test.empty()) {
    draw_tubes_between(app, view, group);
  }
}

} // namespace

bool open_progress(App& app) {
  if (!app.progress) {
    app.progress = std::make_shared<ProgressView>();
  }
  ProgressView& view = *app.progress;
  if (!view.book) {
    auto loaded = desk::ProgressBook::load(app.ground, desk::learner_folder(app.options.sittings));
    if (!loaded) {
      app.say(scenario::to_text(loaded.error()), true);
      return false;
    }
    view.book.emplace(std::move(*loaded));
  }
  view.page = view.book->page();
  view.group = 0;
  view.tubes.clear();
  return true;
}

void draw_progress(App& app) {
  ProgressView& view = *app.progress;
  const float left = ImGui::GetContentRegionAvail().x * 0.48F;
  ImGui::BeginChild("words", {left, 0}, false, ImGuiWindowFlags_NavFlattened);
  if (!view.page.trouble.empty()) {
    ImGui::TextWrapped("%s", view.page.trouble.c_str());
  }
  draw_tomorrow(view.page);
  draw_skills(view.page);
  if (!view.page.colours.empty()) {
    heading("Copper colours");
    for (const std::string& words : view.page.colours) {
      ImGui::TextWrapped("%s", words.c_str());
    }
  }
  ImGui::EndChild();
  ImGui::SameLine();
  ImGui::BeginChild("lines", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  if (view.book) {
    draw_group(app, view);
  }
  ImGui::EndChild();
}

} // namespace matula::window
