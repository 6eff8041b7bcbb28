package varanid.intake.platform.database;

import java.util.Objects;

/** A database role and its password. */
record Login(String role, String password) {

    Login {
        Objects.requireNonNull(role);
        Objects.requireNonNull(password);
    }

    /** Without the password, so that no log ever shows it. */
    @Override
    public String toString() {
        return role;
    }
}
