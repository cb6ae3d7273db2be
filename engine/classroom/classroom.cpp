#include "engine/classroom/classroom.hpp"

#include "engine/classroom/recording.hpp"
#include "engine/classroom/worker.hpp"
#include "engine/records/trouble.hpp"

#include <algorithm>
#include <utility>

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
  Worker long_worker;
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
    reader.deliver([&room, page] {
      room.page_ = std::move(*page);
      ++room.pages_;
      room.versions_.reset();
      room.versions_wanted_ = false;
    });
  }
};

Classroom::Classroom(const assets::World& world, const scoring::Standards& standards,
                     const std::filesystem::path& assets_folder)
    : impl_(std::make_unique<Impl>(world, standards, assets_folder)) {}

Classroom::~Classroom() {
  work_.stop();
}

void Classroom::fail(const std::string& words) {
  trouble_ = words;
}

void Classroom::start_over() {
  trouble_.clear();
  page_.reset();
  versions_.reset();
  versions_wanted_ = false;
  forgetting_.reset();
  past_.reset();
  kept_.reset();
  close_sitting();
}

void Classroom::open(const std::string& address) {
  start_over();
  impl_->ask(*this, [this, address] {
    impl_->store.reset();
    impl_->scope = {};
    impl_->address = address;
    impl_->store.emplace(address);
    impl_->hand_over_page(*this);
  });
}

void Classroom::close() {
  start_over();
  impl_->ask(*this, [this] { impl_->store.reset(); });
}

void Classroom::look(const records::Scope& scope) {
  trouble_.clear();
  impl_->ask(*this, [this, scope] {
    impl_->scope = scope;
    impl_->hand_over_page(*this);
  });
}

template <class End, class Run> void Classroom::do_long(std::optional<End>& place, Run run) {
  if (work_.state().running || !page_) {
    return;
  }
  trouble_.clear();
  place.reset();
  work_.prepare();
  impl_->long_worker.add([this, &place, run, address = page_->address] {
    const AskMarker marker = [this]() -> records::Marker& { return impl_->marker(); };
    auto end = std::make_shared<End>(run(address, marker));
    impl_->long_worker.deliver([this, &place, end, address] {
      place = std::move(*end);
      if (page_ && page_->address == address) {
        look(page_->scope);
      }
    });
  });
}

void Classroom::import(const ImportOrder& order) {
  do_long(import_end_, [this, order](const std::string& address, const AskMarker& marker) {
    return import_into(address, marker, order, work_);
  });
}

void Classroom::take_sealed(const SealedOrder& order, seal::Secret passphrase) {
  auto held = std::make_shared<seal::Secret>(std::move(passphrase)); // A job is copied; a secret is not.
  do_long(sealed_end_, [this, order, held](const std::string& address, const AskMarker& marker) {
    return classroom::take_sealed(address, marker, order, std::move(*held), work_);
  });
}

void Classroom::mark_anew(const RescoreOrder& order) {
  do_long(rescore_end_, [this, order](const std::string& address, const AskMarker& marker) {
    return classroom::mark_anew(address, marker, order, work_);
  });
}

void Classroom::stop_work() {
  work_.stop();
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

void Classroom::want_versions() {
  if (std::exchange(versions_wanted_, true)) {
    return;
  }
  impl_->ask(*this, [this] {
    auto all =
        std::make_shared<std::vector<records::Version>>(records::versions_of(impl_->opened(), impl_->scope));
    impl_->reader.deliver([this, all] { versions_ = std::move(*all); });
  });
}

void Classroom::let_count(const records::Version& version) {
  trouble_.clear();
  impl_->ask(*this, [this, version] {
    records::let_count(impl_->opened(), impl_->scope, version);
    impl_->hand_over_page(*this);
  });
}

void Classroom::look_at_forgetting(const std::string& pseudonym) {
  trouble_.clear();
  forgetting_.reset();
  impl_->ask(*this, [this, pseudonym] {
    auto look = std::make_shared<Forgetting>(classroom::look_at_forgetting(impl_->opened(), pseudonym));
    impl_->reader.deliver([this, look] { forgetting_ = std::move(*look); });
  });
}

void Classroom::look_at_past(const std::string& today) {
  trouble_.clear();
  past_.reset();
  impl_->ask(*this, [this, today] {
    auto look = std::make_shared<PastDays>(classroom::look_at_past(impl_->opened(), today));
    impl_->reader.deliver([this, look] { past_ = std::move(*look); });
  });
}

template <class Do> void Classroom::keep(Do work, bool removes) {
  trouble_.clear();
  kept_.reset();
  if (removes && work_.state().running) {
    trouble_ =
        "Nothing can be removed while sittings are taken in or marked. Stop that, or wait for its end.";
    return;
  }
  if (removes) {
    close_sitting(); // It may be one of those.
  }
  impl_->ask(*this, [this, work, removes] {
    const auto kept = std::make_shared<Kept>(work(impl_->opened()));
    const bool changed = kept->changed;
    impl_->reader.deliver([this, kept, removes] {
      kept_ = std::move(*kept);
      if (removes) {
        forgetting_.reset();
        past_.reset();
      }
    });
    if (changed) {
      impl_->hand_over_page(*this);
    }
  });
}

void Classroom::forget(const std::string& pseudonym) {
  keep([pseudonym](records::Store& store) { return classroom::forget(store, pseudonym); }, true);
}

void Classroom::forget_past(const std::string& today) {
  keep([today](records::Store& store) { return classroom::forget_past(store, today); }, true);
}

void Classroom::take_names(const std::filesystem::path& file) {
  keep([file](records::Store& store) { return classroom::take_names(store, file); }, false);
}

void Classroom::back_up(const std::filesystem::path& file) {
  keep([file](records::Store& store) { return classroom::back_up(store, file); }, false);
}

void Classroom::check_store() {
  keep([](records::Store& store) { return classroom::check_store(store); }, false);
}

bool Classroom::poll() {
  const bool read = impl_->reader.collect();
  const bool worked = impl_->long_worker.collect();
  return impl_->explainer.collect() || read || worked;
}

bool Classroom::reading() const {
  return impl_->reader.busy();
}

bool Classroom::busy() const {
  return impl_->reader.busy() || impl_->long_worker.busy() || impl_->explainer.busy();
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
