#include "engine/classroom/import_run.hpp"

#include <fmt/format.h>

namespace matula::classroom {

ImportEnd import_into(const std::string& address, const AskMarker& marker, const ImportOrder& order,
                      Work& work) {
  ImportEnd end;
  end.folder = order.folder.string();
  static_cast<WorkEnd&>(end) = work.run([&] {
    work.begin("sittings taken in");
    records::Store store(address); // Its own connection: others go on reading meanwhile.
    const records::ImportWishes wishes{order.label, order.keep_until, order.threads, order.now_s};
    end.sum = records::import_folder(store, marker(), order.folder, order.scenarios, wishes, work.progress());
  });
  return end;
}

std::string ImportEnd::words() const {
  if (!trouble.empty()) {
    return trouble;
  }
  if (stopped) {
    return fmt::format("Stopped after {} of {} sittings. What was taken in stays; import the folder again "
                       "and the rest follows.",
                       done, total);
  }
  return fmt::format("{}: {} new, {} known already, {} not taken.", folder, sum->fresh, sum->known,
                     sum->refused.size());
}

} // namespace matula::classroom
