// The app's pages as answers: each file under its path, and the first page for every path of the
// app's own, so that a link into it can be returned to; the bench has a page of its own, at /bench.
//
// Only what is in the program is ever answered: no file of this machine is read.
#pragma once

#include "server/http_message.h"
#include "server/pages.h"

#include <span>

namespace keenfall::server {

// Which page stands for the paths of the app.
enum class FirstPage { desk, bench };

// Of a path outside /api/. Paths of the app have no dot in their last part; whatever else is not a
// file is 404. Files whose names tell their content (under /assets/) may be kept by a browser; all
// others are asked after again, and answered 304 where they are as they were.
[[nodiscard]] HttpResponse site_answer(const HttpRequest& request,
                                       std::span<const PageFile> files,
                                       FirstPage first = FirstPage::desk);

}  // namespace keenfall::server
