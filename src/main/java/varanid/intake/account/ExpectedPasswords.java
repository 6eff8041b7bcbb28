package varanid.intake.account;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/**
 * Passwords that are tried first: those of a short list, the name of this service or of the e-mail written several
 * times, and few characters repeated. Capitals and what is neither letter nor digit make no difference.
 */
@Component
class ExpectedPasswords {

    private static final int FEW_CHARACTERS = 4;

    private final Set<String> listed;

    ExpectedPasswords() {
        try (InputStream file = Objects.requireNonNull(
                ExpectedPasswords.class.getResourceAsStream("/sign-in/expected-passwords.txt"))) {
            this.listed = new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(ExpectedPasswords::bare)
                    .collect(Collectors.toUnmodifiableSet());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    boolean contains(String password, String email) {
        String bare = bare(password);
        return password.chars().distinct().count() <= FEW_CHARACTERS
                || listed.stream().anyMatch(each -> consistsOf(bare, each))
                || consistsOf(bare, bare(email))
                || consistsOf(bare, bare(email.split("@", 2)[0]));
    }

    /** Whether it is that word, once or more, and nothing else but digits. */
    private static boolean consistsOf(String bare, String word) {
        return !word.isEmpty()
                && bare.contains(word)
                && bare.replace(word, "").chars().allMatch(Character::isDigit);
    }

    private static String bare(String text) {
        return text.toLowerCase(Locale.ROOT)
                .codePoints()
                .filter(Character::isLetterOrDigit)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
