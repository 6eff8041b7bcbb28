package varanid.intake.service;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** A file with fields beside it, as {@code multipart/form-data} (RFC 7578). */
public final class Multipart {

    private final String boundary = "b-" + UUID.randomUUID();
    private final ByteArrayOutputStream body = new ByteArrayOutputStream();

    public static Multipart of(byte[] file, String name, String type) {
        return new Multipart().file(file, name, type);
    }

    public Multipart file(byte[] file, String name, String type) {
        return part("name=\"file\"; filename=\"" + name + "\"\r\nContent-Type: " + type, file);
    }

    public Multipart field(String name, String value) {
        return part("name=\"" + name + '"', value.getBytes(StandardCharsets.UTF_8));
    }

    /** @param header what follows {@code form-data;} */
    public Multipart part(String header, byte[] content) {
        body.writeBytes(("--" + boundary + "\r\nContent-Disposition: form-data; " + header + "\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8));
        body.writeBytes(content);
        body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
        return this;
    }

    public String contentType() {
        return "multipart/form-data; boundary=" + boundary;
    }

    public byte[] bytes() {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        whole.writeBytes(body.toByteArray());
        whole.writeBytes(("--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
        return whole.toByteArray();
    }

    public Answer post(Client client, String path, String... headers) {
        String[] all = new String[headers.length + 2];
        System.arraycopy(headers, 0, all, 0, headers.length);
        all[headers.length] = "Content-Type";
        all[headers.length + 1] = contentType();
        return client.send("POST", path, BodyPublishers.ofByteArray(bytes()), all);
    }
}
