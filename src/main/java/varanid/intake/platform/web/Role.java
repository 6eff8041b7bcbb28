package varanid.intake.platform.web;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** What a person may do. */
public enum Role {
    /** Registers and looks over animals. */
    KEEPER,
    /** A licensed vet, or who acts for one: their decision stands above the score. */
    CLINICIAN,
    /** Manages people and tokens, and may do all a keeper may; never what a clinician may. */
    ADMINISTRATOR;

    /** The code in requests and replies. */
    @JsonValue
    public String code() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Role> find(String code) {
        return Arrays.stream(values()).filter(role -> role.code().equals(code)).findFirst();
    }

    /** Whether someone with these roles has this one's rights. */
    boolean isGrantedBy(Set<Role> roles) {
        return roles.contains(this) || (this == KEEPER && roles.contains(ADMINISTRATOR));
    }
}
