#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/fonts.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>

namespace matula::window {

namespace {

const ImVec4 trouble_colour{1.0F, 0.75F, 0.55F, 1.0F};

struct PageRow {
  ClassPage page;
  const char* name;
  const char* label;
  void (*draw)(App&);
  bool on_the_row; ///< Of buttons.
};
constexpr PageRow pages[] = {
    {ClassPage::Standard, "class.standard", "The standard", draw_class_standard, true},
    {ClassPage::Tests, "class.tests", "Each test", draw_class_tests, true},
    {ClassPage::Items, "class.items", "Items", draw_class_items, true},
    {ClassPage::Faults, "class.faults", "Faults", draw_class_faults, true},
    {ClassPage::Lines, "class.lines", "Lines", draw_class_lines, true},
    {ClassPage::Students, "class.students", "Students", draw_class_students, true},
    {ClassPage::Import, "class.import", "Take sittings in", draw_class_import, true},
    {ClassPage::Rescore, "class.rescore", "Marking anew", draw_class_rescore, true},
    {ClassPage::Keeping, "class.keeping", "Keeping", draw_class_keeping, true},
    {ClassPage::Export, "class.export", "Files", draw_class_export, true},
    {ClassPage::Student, "class.student", "Student", draw_class_student, false},
    {ClassPage::Sitting, "class.sitting", "Sitting", draw_class_sitting, false}};

const PageRow& row_of(ClassPage page) {
  return *std::find_if(std::begin(pages), std::end(pages),
                       [page](const PageRow& row) { return row.page == page; });
}

void draw_page_row(App& app, const ClassView& view) {
  bool first = true;
  for (const PageRow& row : pages) {
    if (!row.on_the_row) {
      continue;
    }
    if (!first) {
      flow(width_of(row.label));
    }
    first = false;
    const bool deeper = view.page == ClassPage::Student || view.page == ClassPage::Sitting;
    const bool open = row.page == (deeper ? ClassPage::Students : view.page);
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(open ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(row.name, row.label)) {
      show_page(app, row.page);
    }
    ImGui::PopStyleColor();
  }
}

/// A choice among what the store holds, or all of it.
bool pick_scope(App& app, const char* name, const char* words, const std::vector<std::string>& all,
                std::string& chosen) {
  std::vector<std::string> options{std::string("all ") + words};
  options.insert(options.end(), all.begin(), all.end());
  const auto at = std::find(all.begin(), all.end(), chosen);
  int index = at == all.end() ? 0 : static_cast<int>(at - all.begin()) + 1;
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 12);
  if (!app.widgets.pick(name, std::string("##") + name, options, index)) {
    return false;
  }
  chosen = index == 0 ? "" : all[static_cast<std::size_t>(index - 1)];
  return true;
}

void draw_scope(App& app, ClassView& view) {
  const auto& page = *view.room.page();
  records::Scope scope = page.scope;
  bool changed = pick_scope(app, "scope.case", "cases", page.cases, scope.exercise);
  flow(ImGui::GetFontSize() * 12);
  changed = pick_scope(app, "scope.label", "labels", page.labels, scope.label) || changed;
  if (changed) {
    view.room.look(scope);
  }
  if (!page.names.empty()) {
    flow(width_of("Show names") + ImGui::GetFrameHeight());
    (void)app.widgets.tick("class.names", "Show names", view.by_name);
  }
}

void draw_head(App& app, ClassView& view) {
  if (app.focus_screen > 0) {
    --app.focus_screen;
    app.widgets.focus_next();
  }
  if (app.widgets.button("class.leave", "Back to the start")) {
    view.open = false;
    app.focus_screen = 3;
    app.message.clear();
    find_cases(app);
    return;
  }
  if (view.room.page()) {
    flow(width_of("Another store"));
    if (app.widgets.button("class.other", "Another store")) {
      open_class(app);
      view.room.close();
      return;
    }
  }
  flow(ImGui::GetFontSize() * 9);
  draw_text_size(app);
  const std::string words = view.room.page() ? "Class store: " + view.room.page()->address : "The class";
  flow(width_of(words.c_str()));
  ImGui::TextWrapped("%s", words.c_str());
}

/// How far long work has come, on whatever page.
void draw_progress_line(App& app, ClassView& view) {
  const auto state = view.room.work_state();
  if (!state.running) {
    return;
  }
  if (app.widgets.button("work.stop", "Stop", !state.stopping)) {
    view.room.stop_work();
  }
  ImGui::SameLine();
  const float share =
      state.total > 0 ? static_cast<float>(state.done) / static_cast<float>(state.total) : 0.0F;
  const std::string words = state.stopping ? "stopping after what is at hand"
                            : state.total == 0
                                ? "being prepared"
                                : fmt::format("{} of {} {}", state.done, state.total, state.what);
  ImGui::ProgressBar(share, {-1, 0}, words.c_str());
}

void draw_trouble(const ClassView& view) {
  if (!view.room.trouble().empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextColored(trouble_colour, "Not done: %s", view.room.trouble().c_str());
    ImGui::PopTextWrapPos();
  }
}

void draw_page(App& app, ClassView& view) {
  const PageRow& row = row_of(view.page);
  app.widgets.tell("page", row.name);
  ImGui::BeginChild(row.name, {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  if (view.focus_page) {
    view.focus_page = false;
    ImGui::SetScrollY(0);
  }
  if (view.scroll != 0) {
    ImGui::SetScrollY(ImGui::GetScrollY() + view.scroll * ImGui::GetWindowHeight());
    view.scroll = 0;
  }
  row.draw(app);
  ImGui::EndChild();
}

void handle_page_keys(ClassView& view) {
  constexpr float part = 0.85F; // Some lines stay in sight.
  if (ImGui::IsKeyPressed(GLFW_KEY_PAGE_DOWN)) {
    view.scroll = part;
  }
  if (ImGui::IsKeyPressed(GLFW_KEY_PAGE_UP)) {
    view.scroll = -part;
  }
}

void tell_class(App& app, const ClassView& view) {
  const auto state = view.room.work_state();
  app.widgets.tell("class.busy", view.room.reading() ? "1" : "0");
  app.widgets.tell("class.trouble", view.room.trouble());
  app.widgets.tell("work.running", state.running ? "1" : "0");
  app.widgets.tell("work.done", fmt::format("{}/{}", state.done, state.total));
  if (view.room.page()) {
    app.widgets.tell("class.store", view.room.page()->address);
    app.widgets.tell("class.sittings", std::to_string(view.room.page()->view.sittings));
  }
}

} // namespace

ClassView::ClassView(const App& app)
    : room(app.ground.world(), app.ground.standards(), app.ground.assets_folder()),
      folder(app.options.sittings / "class") {}

bool at_class(const App& app) {
  return app.classes && app.classes->open;
}

std::string class_screen(const App& app) {
  return app.classes->replay ? "replay" : app.classes->room.page() ? "class" : "stores";
}

void show_page(App& app, ClassPage page) {
  app.classes->page = page;
  app.classes->focus_page = true;
}

void draw_class(App& app, float width, float height) {
  ClassView& view = *app.classes;
  tell_class(app, view);
  if (view.replay) {
    draw_replay(app, width, height);
    return;
  }
  const float wide = std::min(width, ImGui::GetFontSize() * 84);
  const Pane pane("class", {(width - wide) / 2, 0, wide, height});
  draw_head(app, view);
  if (!view.open) {
    return;
  }
  draw_progress_line(app, view);
  draw_trouble(view);
  if (!view.room.page()) {
    draw_stores(app);
    return;
  }
  draw_scope(app, view);
  draw_page_row(app, view);
  handle_page_keys(view);
  draw_page(app, view);
}

double class_rest_s(const App& app) {
  constexpr double while_busy_s = 0.1;
  constexpr double frame_s = 1.0 / 30.0;
  const ClassView& view = *app.classes;
  return view.replay && view.replay->playback.playing() ? frame_s : view.room.busy() ? while_busy_s : -1;
}

void run_class(App& app, double wall_s) {
  if (!app.classes) {
    return;
  }
  (void)app.classes->room.poll();
  if (app.classes->open && app.classes->replay) {
    run_replay(app, wall_s);
  }
}

void table_headings() {
  ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
  for (int i = 0; i < ImGui::TableGetColumnCount(); ++i) {
    ImGui::TableNextColumn();
    ImGui::TextUnformatted(ImGui::TableGetColumnName(i));
  }
}

void cell(const std::string& words) {
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::TextWrapped("%s", words.c_str());
}

void draw_bar(double share, const std::string& words) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float height = ImGui::GetTextLineHeight();
  const float room = std::max(ImGui::GetContentRegionAvail().x - ImGui::CalcTextSize("000 %").x -
                                  ImGui::GetStyle().ItemSpacing.x,
                              height);
  const float wide = room * static_cast<float>(std::clamp(share, 0.0, 1.0));
  ImDrawList* ink = ImGui::GetWindowDrawList();
  ink->AddRectFilled(at, {at.x + wide, at.y + height}, ImGui::GetColorU32(ImGuiCol_TextDisabled));
  ink->AddRect(at, {at.x + room, at.y + height}, ImGui::GetColorU32(ImGuiCol_Border));
  ImGui::Dummy({room, height});
  ImGui::SameLine();
  ImGui::TextUnformatted(words.c_str());
}

bool typed(App& app, const char* name, const char* words, std::string& text) {
  const float room = ImGui::GetContentRegionAvail().x;
  const bool done = app.widgets.line(name, text, std::min(room * 0.5F, ImGui::GetFontSize() * 26));
  ImGui::SameLine();
  ImGui::TextWrapped("%s", words);
  return done;
}

std::string say_passed(const records::SittingRow& row) {
  return row.standing.passed ? "passed" : row.why_not.empty() ? "not passed" : "not passed: " + row.why_not;
}

} // namespace matula::window
