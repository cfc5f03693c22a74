package club.emberwell.access;

import club.emberwell.access.problem.Problems;
import club.emberwell.member.club.ClubOptions;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.ext.Provider;

/** Hides the routes of local sign-in while it is switched off. */
@Provider
@LocalSignIn
class LocalSignInFilter implements ContainerRequestFilter {
  private final ClubOptions club;

  LocalSignInFilter(ClubOptions club) {
    this.club = club;
  }

  @Override
  public void filter(ContainerRequestContext request) {
    if (!club.localSignIn()) {
      throw Problems.notFound().exception();
    }
  }
}
