package varanid.intake.platform.web;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * A stored reply that only the sender of the request can open: encrypted (AES-GCM) with a key derived (HMAC-SHA-256)
 * from the bearer token and the Idempotency-Key, of which the database holds hashes only. A new API token, shown once
 * in the reply that made it, would otherwise lie readable in the database for a day.
 */
final class SealedReply {

    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;
    private static final SecureRandom RANDOM = new SecureRandom();

    private SealedReply() {}

    static byte[] seal(byte[] plain, Caller caller, String key) {
        byte[] nonce = new byte[NONCE_BYTES];
        RANDOM.nextBytes(nonce);
        byte[] sealed = apply(Cipher.ENCRYPT_MODE, nonce, plain, caller, key);
        byte[] result = Arrays.copyOf(nonce, NONCE_BYTES + sealed.length);
        System.arraycopy(sealed, 0, result, NONCE_BYTES, sealed.length);
        return result;
    }

    static byte[] open(byte[] stored, Caller caller, String key) {
        byte[] nonce = Arrays.copyOf(stored, NONCE_BYTES);
        byte[] sealed = Arrays.copyOfRange(stored, NONCE_BYTES, stored.length);
        return apply(Cipher.DECRYPT_MODE, nonce, sealed, caller, key);
    }

    private static byte[] apply(int mode, byte[] nonce, byte[] bytes, Caller caller, String key) {
        try {
            Mac derive = Mac.getInstance("HmacSHA256");
            derive.init(new SecretKeySpec(caller.secret().bytes(), "HmacSHA256"));
            byte[] secret = derive.doFinal(("stored reply\n" + key).getBytes(StandardCharsets.UTF_8));
            Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
            cipher.init(mode, new SecretKeySpec(secret, "AES"), new GCMParameterSpec(TAG_BITS, nonce));
            return cipher.doFinal(bytes);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("a stored reply cannot be sealed or opened", e);
        }
    }
}
