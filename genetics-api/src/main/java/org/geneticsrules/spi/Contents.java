package org.geneticsrules.spi;

import com.google.common.collect.ImmutableMap;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.ServiceConfigurationError;
import java.util.Set;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.json.DocumentReader;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;

/**
 * The documents of one plug-in by name, read as far as that is possible without those of others.
 *
 * @param plugin the plug-in
 * @param catalogues its catalogues
 * @param cautions its sets of cautions
 * @param models its models, whose catalogues may come from elsewhere
 * @param patches its patches, whose bases may come from elsewhere
 * @param vocabularies its vocabularies, whose catalogues may come from elsewhere
 */
record Contents(
        ProviderDescriptor plugin,
        Map<String, Catalogue> catalogues,
        Map<String, CautionSet> cautions,
        Map<String, Source> models,
        Map<String, Source> patches,
        Map<String, Source> vocabularies) {

    Contents {
        catalogues = ImmutableMap.copyOf(catalogues);
        cautions = ImmutableMap.copyOf(cautions);
        models = ImmutableMap.copyOf(models);
        patches = ImmutableMap.copyOf(patches);
        vocabularies = ImmutableMap.copyOf(vocabularies);
    }

    /** Catalogues and cautions, which can be compared with those of other plug-ins before any model is read. */
    List<Served.Part> ownParts() {
        List<Served.Part> parts = new ArrayList<>();
        catalogues.values().forEach(catalogue -> parts.add(Served.Part.of(catalogue)));
        cautions.values().forEach(set -> parts.add(Served.Part.of(set)));
        return parts;
    }

    /** A set of cautions that names no catalogue is about all catalogues of its own plug-in. */
    boolean isAbout(CautionSet set, Catalogue catalogue) {
        return set.catalogue()
                .map(reference -> reference.means(catalogue.reference()))
                .orElseGet(() -> catalogues.values().stream()
                        .anyMatch(own -> own.reference().equals(catalogue.reference())));
    }

    /** Runs a plug-in and reads its documents; empty, with problems added, if any of that fails. */
    static Optional<Contents> read(Candidate candidate, List<PluginProblem> problems) {
        Reading reading = new Reading(candidate.descriptor());
        Optional<Contents> contents = reading.read(candidate);
        problems.addAll(reading.problems);
        return reading.problems.isEmpty() ? contents : Optional.empty();
    }

    private static final class Reading {
        /** A chain of causes can be a ring. */
        private static final int MOST_CAUSES = 10;

        private final ProviderDescriptor plugin;
        private final DocumentReader reader = Documents.reader();
        private final List<PluginProblem> problems = new ArrayList<>();
        private final Map<String, Catalogue> catalogues = new LinkedHashMap<>();
        private final Map<String, CautionSet> cautions = new LinkedHashMap<>();
        private final Map<String, Source> models = new LinkedHashMap<>();
        private final Map<String, Source> patches = new LinkedHashMap<>();
        private final Map<String, Source> vocabularies = new LinkedHashMap<>();

        Reading(ProviderDescriptor plugin) {
            this.plugin = plugin;
        }

        Optional<Contents> read(Candidate candidate) {
            GeneticsProvider provider;
            Set<String> names;
            try {
                provider = candidate.start().get();
            } catch (Exception | ServiceConfigurationError | LinkageError e) {
                problems.add(PluginProblem.of("cannot-start", plugin, "its provider cannot be made: " + causes(e)));
                return Optional.empty();
            }
            try {
                names = new LinkedHashSet<>(List.copyOf(provider.documents()));
            } catch (Exception | LinkageError e) {
                problems.add(PluginProblem.of(
                        "cannot-list", plugin, "its provider fails to list its documents: " + causes(e)));
                return Optional.empty();
            }
            if (names.isEmpty()) {
                problems.add(PluginProblem.of("no-documents", plugin, "its provider lists no documents"));
            }
            names.forEach(name -> bytes(provider, name).ifPresent(bytes -> parse(name, Source.of(name, bytes))));
            return Optional.of(new Contents(plugin, catalogues, cautions, models, patches, vocabularies));
        }

        /** At most one byte more than may be read, so that an endless document is refused as too large. */
        private Optional<byte[]> bytes(GeneticsProvider provider, String name) {
            try (InputStream in = provider.open(name)) {
                if (in == null) {
                    throw new IOException("the provider opened nothing");
                }
                return Optional.of(in.readNBytes(reader.limits().bytes() + 1));
            } catch (Exception | LinkageError e) {
                problems.add(PluginProblem.in(
                        "unreadable-document", plugin, name, "the provider lists it but cannot open it: " + causes(e)));
                return Optional.empty();
            }
        }

        private void parse(String name, Source source) {
            try {
                switch (reader.kindOf(source)) {
                    case CATALOGUE -> catalogues.put(name, reader.readCatalogue(source));
                    case CAUTIONS -> cautions.put(name, reader.readCautions(source));
                    case MODEL -> models.put(name, source);
                    case PATCH -> patches.put(name, source);
                    case VOCABULARY -> vocabularies.put(name, source);
                    case PEDIGREE, ANALYSIS ->
                        problems.add(PluginProblem.in(
                                "records-in-plugin", plugin, name, "a plug-in brings rules, not records of animals"));
                }
            } catch (ProblemsException e) {
                problems.add(
                        PluginProblem.in("invalid-document", plugin, name, "the document is not valid", e.problems()));
            }
        }

        private static String causes(Throwable thrown) {
            StringBuilder text = new StringBuilder(thrown.toString());
            Throwable cause = thrown.getCause();
            for (int depth = 0; cause != null && depth < MOST_CAUSES; depth++) {
                text.append(", because of ").append(cause);
                cause = cause.getCause();
            }
            return text.toString();
        }
    }
}
