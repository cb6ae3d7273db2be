#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

/// A bare name is a file in the folder; it ends in .db.
std::string address_of(const ClassView& view) {
  const bool bare = view.address.find('/') == std::string::npos;
  if (!bare) {
    return view.address;
  }
  const bool ended = std::filesystem::path(view.address).extension() == ".db";
  return (view.folder / (ended ? view.address : view.address + ".db")).string();
}

void draw_known(App& app, ClassView& view) {
  std::string chosen;
  for (const auto& store : view.stores) {
    if (app.widgets.button(("store." + store.stem().string()).c_str(), "Open")) {
      chosen = store.string();
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    ImGui::TextWrapped("%s", store.filename().c_str());
  }
  if (view.stores.empty()) {
    ImGui::TextWrapped("There is no store yet. Give the first one a name below.");
  }
  if (!chosen.empty()) {
    view.room.open(chosen);
  }
}

} // namespace

void look_into_folder(ClassView& view) {
  view.beside.clear();
  std::error_code wrong;
  for (const auto& entry : std::filesystem::directory_iterator(view.folder, wrong)) {
    const auto name = entry.path().filename();
    if (name != "written" && name != "copies") {
      view.beside.push_back({entry.path(), entry.is_directory(wrong)});
    }
  }
  std::sort(view.beside.begin(), view.beside.end(),
            [](const Beside& a, const Beside& b) { return a.path < b.path; });
}

std::filesystem::path place_of(const ClassView& view, const std::string& text) {
  return text.empty() || text.find('/') != std::string::npos ? std::filesystem::path(text)
                                                             : view.folder / text;
}

void choose_place(App& app, const char* name, const char* words, const char* ending, std::string& text) {
  const ClassView& view = *app.classes;
  const float width = std::min(ImGui::GetContentRegionAvail().x * 0.5F, ImGui::GetFontSize() * 26);
  ImGui::Spacing();
  ImGui::TextWrapped("%s", words);
  (void)app.widgets.line(name, text, width);
  for (const auto& one : view.beside) {
    const bool fits = *ending == '\0' ? one.is_folder : !one.is_folder && one.path.extension() == ending;
    if (!fits) {
      continue;
    }
    const std::string file = one.path.filename().string();
    flow(width_of(file.c_str()) + ImGui::GetFrameHeight());
    if (app.widgets.choice((std::string(name) + ".from." + file).c_str(), file, text == file)) {
      text = file;
    }
  }
}

void open_class(App& app) {
  if (!app.classes) {
    app.classes = std::make_shared<ClassView>(app);
  }
  ClassView& view = *app.classes;
  std::error_code ignored; // A folder that cannot be made holds nothing, and the screen says so.
  std::filesystem::create_directories(view.folder, ignored);
  view.stores = classroom::stores_in(view.folder);
  look_into_folder(view);
  view.open = true;
  view.page = ClassPage::Standard;
  app.focus_screen = 3;
  app.message.clear();
}

void draw_stores(App& app) {
  ClassView& view = *app.classes;
  if (view.room.reading()) {
    ImGui::TextWrapped("The store is being opened and looked through.");
    return;
  }
  ImGui::BeginChild("stores", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  heading("A store holds the sittings of your classes and what they came to");
  ImGui::TextWrapped("Those that lie in %s:", view.folder.c_str());
  draw_known(app, view);
  heading("Another one, or a new one");
  ImGui::TextWrapped("A name alone is a file in that folder, made if it is not there. A path is that file. "
                     "postgresql://HOST/DATABASE?user=NAME is a department's database.");
  (void)typed(app, "store.address", "Name, path or address", view.address);
  if (app.widgets.button("store.open", "Open it", !view.address.empty())) {
    view.room.open(address_of(view));
  }
  ImGui::TextWrapped("These are results of training at a simulated bench; nothing here examines a patient.");
  ImGui::EndChild();
}

} // namespace matula::window
