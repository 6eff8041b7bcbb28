package varanid.intake.platform.database;

import java.util.Objects;

/**
 * Where the database is and who may use it.
 *
 * @param url the JDBC address, without a password
 * @param owner owns the tables; used for migrations only
 * @param service what the application works with; the same as {@code owner} where there is one role only
 */
record DatabaseAccess(String url, Login owner, Login service) {

    DatabaseAccess {
        Objects.requireNonNull(url);
        Objects.requireNonNull(owner);
        Objects.requireNonNull(service);
    }
}
