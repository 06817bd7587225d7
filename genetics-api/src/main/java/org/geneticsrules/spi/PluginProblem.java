package org.geneticsrules.spi;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.problem.Problem;

/**
 * Why a plug-in, or something that claims to be one, is not served. It never keeps others from being served.
 *
 * <p>Immutable and thread-safe.
 *
 * @param code a stable word for programs, such as {@code unreadable-document}; it never changes between versions
 * @param subject the plug-in's id and version, or the name of its class, as far as it is known
 * @param locations the jars, folders or modules concerned, sorted; empty if not even that is known
 * @param document name of the document concerned, if it is about one
 * @param message what is wrong and what to do about it, in a sentence or two
 * @param details what is wrong within the document, if it was read
 */
public record PluginProblem(
        String code,
        String subject,
        List<String> locations,
        Optional<String> document,
        String message,
        List<Problem> details) {

    /**
     * Copies the lists.
     *
     * @param code a stable word
     * @param subject the plug-in
     * @param locations where it came from
     * @param document the document concerned
     * @param message what is wrong
     * @param details what is wrong within the document
     */
    public PluginProblem {
        locations = locations.stream().distinct().sorted().collect(ImmutableList.toImmutableList());
        details = ImmutableList.copyOf(details);
    }

    static PluginProblem of(String code, String subject, List<String> locations, String message) {
        return new PluginProblem(code, subject, locations, Optional.empty(), message, ImmutableList.of());
    }

    static PluginProblem of(String code, ProviderDescriptor plugin, String message) {
        return of(code, plugin.release(), ImmutableList.of(plugin.location()), message);
    }

    static PluginProblem in(String code, ProviderDescriptor plugin, String document, String message) {
        return in(code, plugin, document, message, ImmutableList.of());
    }

    static PluginProblem in(
            String code, ProviderDescriptor plugin, String document, String message, List<Problem> details) {
        return new PluginProblem(
                code, plugin.release(), ImmutableList.of(plugin.location()), Optional.of(document), message, details);
    }

    /** Returns what, where and why on the first line, and each detail on a line of its own. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(subject);
        if (!locations.isEmpty()) {
            text.append(" (").append(String.join(", ", locations)).append(')');
        }
        document.ifPresent(name -> text.append(", document ").append(name));
        text.append(": ").append(message).append(" [").append(code).append(']');
        details.forEach(problem -> text.append("\n  ").append(problem));
        return text.toString();
    }
}
