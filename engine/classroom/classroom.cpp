#include "engine/classroom/classroom.hpp"

#include "engine/classroom/recording.hpp"
#include "engine/classroom/worker.hpp"
#include "engine/records/trouble.hpp"

#include <algorithm>

namespace matula::classroom {

/// What the threads work on; touched by the reader's thread alone, but for the marker.
struct Classroom::Impl {
  Impl(const assets::World& the_world, scoring::Standards the_standards, std::filesystem::path the_folder)
      : world(the_world), standards(std::move(the_standards)), folder(std::move(the_folder)) {}

  const assets::World& world;
  scoring::Standards standards;
  std::filesystem::path folder;
  std::mutex making;
  std::unique_ptr<records::Marker> made_marker;
  std::optional<judging::Basis> made_basis;
  std::optional<records::Store> store;
  std::string address; ///< Of the store.
  records::Scope scope;
  Worker reader;
  Worker importer;
  Worker explainer;

  records::Marker& marker() {
    const std::lock_guard<std::mutex> lock(making);
    if (!made_marker) {
      made_marker = std::make_unique<records::Marker>(world, standards, folder);
    }
    return *made_marker;
  }

  const judging::Basis& basis() {
    if (!made_basis) {
      auto read = judging::load_basis(folder);
      if (!read) {
        throw records::Trouble(scenario::to_text(read.error()));
      }
      made_basis = std::move(*read);
    }
    return *made_basis;
  }

  records::Store& opened() {
    if (!store) {
      throw records::Trouble("No store is open.");
    }
    return *store;
  }

  /// Does `work` on the reader's thread; what it throws becomes `fail` on the caller's.
  template <class Work> void ask(Classroom& room, Work work) {
    reader.add([this, &room, work = std::move(work)] {
      try {
        work();
      } catch (const std::exception& wrong) {
        reader.deliver([&room, words = std::string(wrong.what())] { room.fail(words); });
      }
    });
  }

  /// On the explainer's thread; nothing for a sitting that is not wanted any more.
  void explain(Classroom& room, const OpenSitting& open, long long number) {
    if (room.wanted_ != number) {
      return;
    }
    auto why = std::make_shared<std::vector<attribution::Explanation>>();
    std::string trouble;
    try {
      *why = explain_sitting(open, marker());
    } catch (const std::exception& wrong) {
      trouble = wrong.what();
    }
    explainer.deliver([&room, why, number, trouble] {
      if (room.wanted_ == number && room.sitting_) {
        room.sitting_->why = std::move(*why);
        room.sitting_->explained = true;
        room.trouble_ = trouble.empty() ? room.trouble_ : trouble;
      }
    });
  }

  void hand_over_page(Classroom& room) {
    auto page = std::make_shared<StorePage>(read_page(opened(), address, scope, basis()));
    reader.deliver([&room, page] { room.page_ = std::move(*page); });
  }
};

Classroom::Classroom(const assets::World& world, const scoring::Standards& standards,
                     const std::filesystem::path& assets_folder)
    : impl_(std::make_unique<Impl>(world, standards, assets_folder)) {}

Classroom::~Classroom() {
  import_.stop();
}

void Classroom::fail(const std::string& words) {
  trouble_ = words;
}

void Classroom::open(const std::string& address) {
  trouble_.clear();
  page_.reset();
  close_sitting();
  impl_->ask(*this, [this, address] {
    impl_->store.reset();
    impl_->scope = {};
    impl_->address = address;
    impl_->store.emplace(address);
    impl_->hand_over_page(*this);
  });
}

void Classroom::close() {
  trouble_.clear();
  page_.reset();
  close_sitting();
  impl_->ask(*this, [this] { impl_->store.reset(); });
}

void Classroom::look(const records::Scope& scope) {
  trouble_.clear();
  impl_->ask(*this, [this, scope] {
    impl_->scope = scope;
    impl_->hand_over_page(*this);
  });
}

void Classroom::import(const ImportOrder& order) {
  if (import_.state().running || !page_) {
    return;
  }
  trouble_.clear();
  import_end_.reset();
  import_.prepare();
  impl_->importer.add([this, order, address = page_->address] {
    auto end = std::make_shared<ImportEnd>(import_.run(
        address, [this]() -> records::Marker& { return impl_->marker(); }, order));
    impl_->importer.deliver([this, end, address] {
      import_end_ = std::move(*end);
      if (page_ && page_->address == address) {
        look(page_->scope);
      }
    });
  });
}

void Classroom::stop_import() {
  import_.stop();
}

void Classroom::open_sitting(long long number) {
  trouble_.clear();
  sitting_.reset();
  wanted_ = number;
  impl_->ask(*this, [this, number] {
    auto open =
        std::make_shared<OpenSitting>(classroom::open_sitting(impl_->opened(), impl_->marker(), number));
    impl_->reader.deliver([this, open, number] {
      if (wanted_ == number) {
        sitting_ = *open;
      }
    });
    impl_->explainer.add([this, open, number] { impl_->explain(*this, *open, number); });
  });
}

void Classroom::close_sitting() {
  wanted_ = 0;
  sitting_.reset();
}

void Classroom::write(const ExportOrder& order) {
  trouble_.clear();
  written_.clear();
  impl_->ask(*this, [this, order] {
    auto place = write_export(impl_->opened(), impl_->scope, impl_->basis(), order).string();
    impl_->reader.deliver([this, place] { written_ = place; });
  });
}

bool Classroom::poll() {
  const bool read = impl_->reader.collect();
  const bool imported = impl_->importer.collect();
  return impl_->explainer.collect() || read || imported;
}

bool Classroom::reading() const {
  return impl_->reader.busy();
}

bool Classroom::busy() const {
  return impl_->reader.busy() || impl_->importer.busy() || impl_->explainer.busy();
}

std::vector<std::filesystem::path> stores_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  std::error_code wrong;
  for (const auto& entry : std::filesystem::directory_iterator(folder, wrong)) {
    if (entry.path().extension() == ".db" && entry.is_regular_file(wrong)) {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

} // namespace matula::classroom
