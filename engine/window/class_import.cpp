#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <chrono>
#include <fmt/format.h>

namespace matula::window {

namespace {

void begin_import(App& app, ClassView& view) {
  classroom::ImportOrder order;
  order.folder = place_of(view, view.import_folder);
  if (!view.import_scenarios.empty()) {
    order.scenarios.push_back(place_of(view, view.import_scenarios));
  }
  order.scenarios.push_back(app.options.scenarios);
  order.label = view.import_label;
  order.keep_until = view.keep_until;
  order.now_s = clock_s();
  view.room.import(order);
}

void draw_end(App& app, const classroom::ImportEnd& end) {
  heading("The last import");
  app.widgets.tell("import.end", end.words());
  ImGui::TextWrapped("%s", end.words().c_str());
  if (!end.sum) {
    return;
  }
  for (const auto& warning : end.sum->warnings) {
    point(warning);
  }
  for (const auto& refused : end.sum->refused) {
    point(fmt::format("{} was not taken: {}", refused.file, refused.why));
  }
}

} // namespace

std::int64_t clock_s() {
  using std::chrono::duration_cast;
  return duration_cast<std::chrono::seconds>(std::chrono::system_clock::now().time_since_epoch()).count();
}

bool is_day(const std::string& text) {
  return text.empty() || (text.size() == 10 && text[4] == '-' && text[7] == '-' &&
                          text.find_first_not_of("0123456789-") == std::string::npos);
}

void draw_class_import(App& app) {
  ClassView& view = *app.classes;
  if (app.widgets.choice("import.logs", "A folder of logs", !view.sealed)) {
    view.sealed = false;
  }
  flow(width_of("Sealed results of an examination") + ImGui::GetFrameHeight());
  if (app.widgets.choice("import.sealed", "Sealed results of an examination", view.sealed)) {
    view.sealed = true;
  }
  flow(width_of("Look into the folder again"));
  if (app.widgets.button("import.look", "Look into the folder again")) {
    look_into_folder(view);
  }
  if (view.sealed) {
    draw_class_sealed(app);
    return;
  }
  heading("Take in a folder of sittings");
  ImGui::TextWrapped("It holds a folder for every student, named by the pseudonym, with the student's logs "
                     "(*.jsonl). Each sitting is replayed and marked here, from its log alone; marks that "
                     "came with it count for nothing. The same folder may be taken in again: what is known "
                     "is passed over. You can go on looking at the class meanwhile.");
  choose_place(app, "import.folder", "Folder (a name alone: beside the stores)", "", view.import_folder);
  (void)typed(app, "import.scenarios", "Folder of your own scenarios; those shipped are known",
              view.import_scenarios);
  (void)typed(app, "import.label", "A word for this lot, such as spring 2027", view.import_label);
  (void)typed(app, "import.until", "Last day they may be kept, such as 2027-09-30; empty for no end",
              view.keep_until);
  const bool day = is_day(view.keep_until);
  if (!day) {
    ImGui::TextWrapped("Write the day as 2027-09-30.");
  }
  const bool running = view.room.work_state().running;
  if (app.widgets.button("import.begin", "Take them in", !running && day && !view.import_folder.empty())) {
    begin_import(app, view);
  }
  if (running) {
    ImGui::TextWrapped("%s", view.room.work_state().last.c_str());
  }
  if (view.room.import_end()) {
    draw_end(app, *view.room.import_end());
  }
}

void draw_class_export(App& app) {
  ClassView& view = *app.classes;
  const auto& page = *view.room.page();
  heading("Files for others, of what is looked at now");
  ImGui::TextWrapped("%d of %d sittings%s%s%s%s. They hold pseudonyms; a file that is there is never written "
                     "over.",
                     static_cast<int>(page.sittings.size()), page.all_sittings,
                     page.scope.exercise.empty() ? "" : ", case ", page.scope.exercise.c_str(),
                     page.scope.label.empty() ? "" : ", label ", page.scope.label.c_str());
  (void)typed(app, "export.title", "Title of the report", view.title);
  (void)typed(app, "export.home", "xAPI: the web address your pseudonyms belong to", view.home);
  std::optional<classroom::Export> chosen;
  for (const auto& kind : classroom::export_kinds()) {
    if (app.widgets.button((std::string("export.") + kind.key).c_str(), "Write")) {
      chosen = kind.what;
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    ImGui::TextWrapped("%s", kind.words);
  }
  if (!page.names.empty()) {
    ImGui::TextWrapped("%s", view.by_name ? "The report has names beside the pseudonyms, as you look at the "
                                            "class with names now."
                                          : "The report has pseudonyms alone, as you look at the class now.");
  }
  if (chosen) {
    classroom::ExportOrder order;
    order.what = *chosen;
    order.folder = view.folder / "written";
    order.title = view.title;
    order.by_name = view.by_name;
    order.home = view.home;
    order.now_s = clock_s();
    view.room.write(order);
  }
  app.widgets.tell("export.written", view.room.written());
  if (!view.room.written().empty()) {
    heading("Written");
    ImGui::TextWrapped("%s", view.room.written().c_str());
  }
}

} // namespace matula::window
