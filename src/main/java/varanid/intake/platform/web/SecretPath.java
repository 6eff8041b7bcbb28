package varanid.intake.platform.web;

/**
 * A path that is open to whoever knows it, because its last part is a secret. A feature makes a bean of it.
 *
 * <p>It can be read (GET, HEAD) without a token, and sent to (POST) where it says so, and an {@code Authorization} header that comes along is not looked at.
 * Every reply asks that the address be not passed on or indexed; problems and the log name the pattern instead of the
 * address.
 *
 * @param pattern with {@code *} in place of the secret
 * @param takesPosts whether something can be sent there too
 */
public record SecretPath(String pattern, boolean takesPosts) {

    /** One that can only be read. */
    public SecretPath(String pattern) {
        this(pattern, false);
    }
}
