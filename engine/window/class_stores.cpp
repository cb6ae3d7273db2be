#include "engine/window/class_view.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

/// Folders beside the stores, those with written files left out.
std::vector<std::filesystem::path> folders_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> found;
  std::error_code wrong;
  for (const auto& entry : std::filesystem::directory_iterator(folder, wrong)) {
    if (entry.is_directory(wrong) && entry.path().filename() != "written") {
      found.push_back(entry.path());
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

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

void open_class(App& app) {
  if (!app.classes) {
    app.classes = std::make_shared<ClassView>(app);
  }
  ClassView& view = *app.classes;
  std::error_code ignored; // A folder that cannot be made holds nothing, and the screen says so.
  std::filesystem::create_directories(view.folder, ignored);
  view.stores = classroom::stores_in(view.folder);
  view.handed_in = folders_in(view.folder);
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
  ImGui::TextWrapped("These are results of training at a simulated bench; nothing here examines a patient. "
                     "Forgetting a student, marking anew, name lists and backups are done with the "
                     "program's command \"matula class\".");
  ImGui::EndChild();
}

} // namespace matula::window
