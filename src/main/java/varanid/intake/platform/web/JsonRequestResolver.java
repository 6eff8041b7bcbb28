package varanid.intake.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.http.InvalidMediaTypeException;
import org.springframework.http.MediaType;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** Reads the body of a request, after authentication and never more of it than is allowed. */
final class JsonRequestResolver implements HandlerMethodArgumentResolver {

    /** The largest body: some ten times the largest sensible one. */
    static final int LARGEST_BODY = 256 * 1024;

    private static final Pattern KEY = Pattern.compile("[\\x21-\\x7E]{1,200}");

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == JsonRequest.class;
    }

    @Override
    public JsonRequest resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest webRequest,
            @Nullable WebDataBinderFactory binders)
            throws IOException {
        HttpServletRequest request = Requests.servlet(webRequest);
        @Nullable String key = key(request);
        if (request.getContentLengthLong() > LARGEST_BODY) {
            throw tooLarge();
        }
        if (request.getContentType() != null) {
            requireJson(request);
        }
        byte[] body = request.getInputStream().readNBytes(LARGEST_BODY + 1);
        if (body.length > LARGEST_BODY) {
            throw tooLarge();
        }
        JsonNode document;
        if (body.length == 0 && request.getContentType() == null) {
            document = JsonNodeFactory.instance.objectNode();
        } else {
            requireJson(request);
            document = StrictJson.parse(body);
        }
        return new JsonRequest(request.getMethod() + " " + Requests.target(request), body, document, key);
    }

    static @Nullable String key(HttpServletRequest request) {
        List<String> keys = Collections.list(request.getHeaders("Idempotency-Key"));
        if (keys.isEmpty()) {
            return null;
        }
        if (keys.size() > 1 || !KEY.matcher(keys.get(0)).matches()) {
            throw ProblemException.malformed(
                    "Idempotency-Key is one text of 1 to 200 visible ASCII characters, such as a UUID.");
        }
        return keys.get(0);
    }

    private static void requireJson(HttpServletRequest request) {
        @Nullable String encoding = request.getHeader("Content-Encoding");
        if (encoding != null && !encoding.toLowerCase(Locale.ROOT).equals("identity")) {
            throw unsupported("The body is sent with Content-Encoding " + Texts.quote(encoding) + "; send it plain.");
        }
        @Nullable String type = request.getContentType();
        if (type == null) {
            throw unsupported("The body has no Content-Type; send application/json.");
        }
        try {
            MediaType given = MediaType.parseMediaType(type);
            boolean utf8 = given.getParameter("charset") == null
                    || "utf-8".equalsIgnoreCase(given.getParameter("charset").replace("\"", ""));
            if (given.getType().equals("application") && given.getSubtype().equals("json") && utf8) {
                return;
            }
        } catch (InvalidMediaTypeException e) {
            // Said below, like any other type that is not ours.
        }
        throw unsupported("The body is sent as " + Texts.quote(type) + "; send application/json in UTF-8.");
    }

    private static ProblemException unsupported(String detail) {
        return new ProblemException(
                ProblemType.UNSUPPORTED_MEDIA_TYPE, detail, List.of(), Map.of("Accept", "application/json"));
    }

    private static ProblemException tooLarge() {
        return new ProblemException(ProblemType.TOO_LARGE, "The body is larger than " + LARGEST_BODY + " bytes.");
    }
}
