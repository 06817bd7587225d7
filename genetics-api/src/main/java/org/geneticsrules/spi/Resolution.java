package org.geneticsrules.spi;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * Follows the references between the documents of all plug-ins.
 *
 * <p>All plug-ins are judged against the same catalogues, those that fail are taken out together, and the rest are judged again without
 * their catalogues and models, until none fails. So the outcome does not depend on any order.
 */
final class Resolution {

    private final List<PluginProblem> problems;

    private Resolution(List<PluginProblem> problems) {
        this.problems = problems;
    }

    /** The plug-ins of which nothing fails, in the order given; why the others fail is added to the problems. */
    static List<Served> of(List<Contents> all, List<PluginProblem> problems) {
        return new Resolution(problems).resolve(all);
    }

    private List<Served> resolve(List<Contents> all) {
        List<Contents> standing = withoutClashes(all, Contents::plugin, Contents::ownParts);
        while (true) {
            Set<Catalogue> catalogues = new LinkedHashSet<>();
            standing.forEach(contents -> catalogues.addAll(contents.catalogues().values()));
            List<Served> sound = new ArrayList<>();
            standing.forEach(contents -> judge(contents, catalogues).ifPresent(sound::add));
            List<Served> served = withFittingPatches(withoutClashes(sound, Served::plugin, Served::parts));
            if (served.size() == standing.size()) {
                return served;
            }
            standing = served.stream().map(Served::contents).toList();
        }
    }

    /** Takes out all plug-ins of which a patch does not fit its base, or whose base is not served. */
    private List<Served> withFittingPatches(List<Served> all) {
        List<Model> bases = all.stream().flatMap(one -> one.models().stream()).toList();
        List<Served> fitting = new ArrayList<>();
        for (Served one : all) {
            List<PluginProblem> found = new ArrayList<>();
            one.contents()
                    .patches()
                    .forEach((name, source) -> read(
                            one.plugin(),
                            name,
                            "patch",
                            () -> Documents.reader().readPatch(source, bases),
                            found));
            problems.addAll(found);
            if (found.isEmpty()) {
                fitting.add(one);
            }
        }
        return fitting;
    }

    private Optional<Served> judge(Contents contents, Collection<Catalogue> catalogues) {
        ProviderDescriptor plugin = contents.plugin();
        List<PluginProblem> found = new ArrayList<>();
        List<Model> models = new ArrayList<>();
        contents.models()
                .forEach((name, source) -> read(
                                plugin, name, "model", () -> Documents.reader().readModel(source, catalogues), found)
                        .ifPresent(models::add));
        List<Patch> patches = new ArrayList<>();
        contents.patches()
                .forEach((name, source) -> read(
                                plugin, name, "patch", () -> Documents.reader().readPatch(source), found)
                        .ifPresent(patches::add));
        List<Vocabulary> vocabularies = new ArrayList<>();
        contents.vocabularies()
                .forEach((name, source) -> read(
                                plugin,
                                name,
                                "vocabulary",
                                () -> Documents.reader().readVocabulary(source, catalogues),
                                found)
                        .ifPresent(vocabularies::add));
        contents.cautions().forEach((name, set) -> cautions(contents, name, set, catalogues, found));
        Served served = Served.of(contents, models, patches, vocabularies);
        if (found.isEmpty()) {
            defaultModel(plugin, models, found);
            repeated(served, found);
        }
        problems.addAll(found);
        return found.isEmpty() ? Optional.of(served) : Optional.empty();
    }

    private static <T> Optional<T> read(
            ProviderDescriptor plugin, String name, String kind, Supplier<T> read, List<PluginProblem> found) {
        try {
            return Optional.of(read.get());
        } catch (ProblemsException e) {
            found.add(PluginProblem.in(
                    "invalid-document", plugin, name, "the document is not a valid " + kind, e.problems()));
            return Optional.empty();
        }
    }

    private static void cautions(
            Contents contents,
            String name,
            CautionSet set,
            Collection<Catalogue> catalogues,
            List<PluginProblem> found) {
        List<Catalogue> meant = catalogues.stream()
                .filter(catalogue -> contents.isAbout(set, catalogue))
                .toList();
        if (meant.isEmpty()) {
            String message = set.catalogue()
                    .map(reference -> "the cautions are for catalogue " + reference + ", which is not served")
                    .orElse("the cautions name no catalogue, and the plug-in brings none of its own");
            found.add(PluginProblem.in("cautions-without-catalogue", contents.plugin(), name, message));
        }
        try {
            meant.forEach(set::check);
        } catch (ProblemsException e) {
            found.add(PluginProblem.in(
                    "invalid-document",
                    contents.plugin(),
                    name,
                    "the cautions do not fit their catalogue",
                    e.problems()));
        }
    }

    private static void defaultModel(ProviderDescriptor plugin, List<Model> models, List<PluginProblem> found) {
        plugin.defaultModel().ifPresent(id -> {
            long meant = models.stream().filter(model -> model.id().equals(id)).count();
            if (meant != 1) {
                found.add(PluginProblem.of(
                        "unclear-default-model",
                        plugin,
                        "its default model \"" + id + "\" is " + meant + " of its models; expected one of " + models));
            }
        });
    }

    private static void repeated(Served served, List<PluginProblem> found) {
        Set<String> seen = new LinkedHashSet<>();
        for (Served.Part part : served.parts()) {
            if (!seen.add(part.name())) {
                found.add(PluginProblem.of(
                        "repeated-document", served.plugin(), "two of its documents call themselves " + part.name()));
            }
        }
    }

    /** Takes out all plug-ins that bring documents of one name and different content; equal content is one document. */
    private <T> List<T> withoutClashes(
            List<T> all, Function<T, ProviderDescriptor> plugin, Function<T, List<Served.Part>> parts) {
        Map<String, Map<String, Set<T>>> byName = new TreeMap<>();
        for (T one : all) {
            for (Served.Part part : parts.apply(one)) {
                byName.computeIfAbsent(part.name(), name -> new TreeMap<>())
                        .computeIfAbsent(part.sha256(), hash -> new LinkedHashSet<>())
                        .add(one);
            }
        }
        Set<T> out = new LinkedHashSet<>();
        byName.forEach((name, contents) -> {
            Set<T> owners = new LinkedHashSet<>();
            contents.values().forEach(owners::addAll);
            if (contents.size() > 1 && owners.size() > 1) {
                out.addAll(owners);
                problems.add(PluginProblem.of(
                        "document-clash",
                        owners.stream()
                                .map(owner -> plugin.apply(owner).release())
                                .sorted()
                                .collect(Collectors.joining(", ")),
                        owners.stream()
                                .map(owner -> plugin.apply(owner).location())
                                .toList(),
                        "these plug-ins bring documents that call themselves " + name
                                + " but differ; none of them is served. Leave one, or choose one"));
            }
        });
        return all.stream().filter(one -> !out.contains(one)).toList();
    }
}
