package varanid.intake.platform.database;

import java.io.IOException;
import java.io.StringReader;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.Properties;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/** The passwords of the embedded server's three roles: random, kept in a file of the home folder. */
record Passwords(Login superuser, Login owner, Login service) {

    static final String FILE = "database-passwords";

    private static final String SUPERUSER = "postgres";
    private static final String OWNER = "varanid_owner";
    private static final String SERVICE = "varanid_service";

    /** Reads the file; makes it where there is none, which is wrong once there is a database. */
    static Passwords of(HomeFolder home, boolean databaseExists) throws IOException {
        Optional<String> stored = home.find(FILE);
        if (stored.isPresent()) {
            return read(home, stored.get());
        }
        if (databaseExists) {
            throw new CannotStart(
                    "The file %s is missing: it keeps the passwords of the database in that folder."
                            .formatted(home.resolve(FILE)),
                    "Put it back from the backup that holds the folder. Nothing was changed.");
        }
        Passwords made =
                new Passwords(new Login(SUPERUSER, random()), new Login(OWNER, random()), new Login(SERVICE, random()));
        home.write(FILE, made.text());
        return made;
    }

    private static Passwords read(HomeFolder home, String text) throws IOException {
        Properties properties = new Properties();
        properties.load(new StringReader(text));
        return new Passwords(
                read(home, properties, SUPERUSER), read(home, properties, OWNER), read(home, properties, SERVICE));
    }

    private static Login read(HomeFolder home, Properties properties, String role) {
        String password = properties.getProperty(role, "");
        if (password.isBlank()) {
            throw new CannotStart(
                    "The file %s has no password for the role %s.".formatted(home.resolve(FILE), role),
                    "Put the file back from the backup that holds the folder. Nothing was changed.");
        }
        return new Login(role, password);
    }

    private String text() {
        StringBuilder text =
                new StringBuilder("# Passwords of the embedded database. Belongs to its folder: back up both.\n");
        for (Login login : new Login[] {superuser, owner, service}) {
            text.append(login.role()).append('=').append(login.password()).append('\n');
        }
        return text.toString();
    }

    /** 192 random bits. */
    private static String random() {
        byte[] bytes = new byte[24];
        new SecureRandom().nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
