#include "server/told_in.h"

#include <utility>

namespace keenfall::server {

base::Result<materials::ToldIn> told_in_of(const HttpRequest& request) {
  auto told = materials::told_in(header_of(request, "x-keenfall-told-in"));
  if (told) return told;
  base::Problem problem = std::move(told.error());
  problem.place.column = "X-Keenfall-Told-In";
  return base::failed(std::move(problem));
}

}  // namespace keenfall::server
