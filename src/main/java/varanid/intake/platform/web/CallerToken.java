package varanid.intake.platform.web;

import org.springframework.security.authentication.AbstractAuthenticationToken;
import org.springframework.security.core.authority.AuthorityUtils;

/** The caller, as Spring Security carries it through the request. */
final class CallerToken extends AbstractAuthenticationToken {

    private static final long serialVersionUID = 1L;

    private final transient Caller caller;

    CallerToken(Caller caller) {
        super(AuthorityUtils.NO_AUTHORITIES);
        this.caller = caller;
        setAuthenticated(true);
    }

    Caller caller() {
        return caller;
    }

    @Override
    public Object getCredentials() {
        return "";
    }

    @Override
    public Object getPrincipal() {
        return caller.personId();
    }
}
