package org.geneticsrules.spi;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Reference;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * The plug-ins at hand with all they bring.
 *
 * <pre>{@code
 * Registry registry = Registry.discover();
 * registry.problems().forEach(System.err::println);
 * Answers answers = registry.answers(registry.model("example.mice.agouti"));
 * }</pre>
 *
 * <p>A registry is made eagerly: when one of these methods returns, all plug-ins have been run and all documents read and checked. A
 * plug-in that fails in any part is not served and listed under {@link #problems()}; no failure of a plug-in is thrown. See the
 * package's description for the rules. Everything is in order of the plug-ins' ids, versions and locations, whatever order they were
 * found in.
 *
 * <p>Immutable and thread-safe.
 */
public final class Registry {

    private final ImmutableList<Served> served;
    private final ImmutableList<PluginProblem> problems;
    private final ImmutableMap<Reference, Model> models;
    private final ImmutableMap<Reference, ModelSource> sources;
    private final ImmutableMap<Reference, Catalogue> catalogues;
    private final ImmutableMap<Reference, Patch> patches;
    private final ImmutableMap<Reference, Vocabulary> vocabularies;

    private Registry(Discovery discovery, Predicate<ProviderDescriptor> wanted) {
        List<Contents> contents = new ArrayList<>();
        List<Candidate> chosen = discovery.chosen(wanted);
        List<PluginProblem> found = new ArrayList<>(discovery.problems());
        chosen.forEach(candidate -> Contents.read(candidate, found).ifPresent(contents::add));
        this.served = ImmutableList.copyOf(Resolution.of(contents, found));
        this.problems = found.stream()
                .sorted(Comparator.comparing(PluginProblem::subject).thenComparing(PluginProblem::toString))
                .collect(ImmutableList.toImmutableList());
        Map<Reference, Model> modelsFound = new LinkedHashMap<>();
        Map<Reference, ModelSource> sourcesFound = new LinkedHashMap<>();
        Map<Reference, Catalogue> cataloguesFound = new LinkedHashMap<>();
        Map<Reference, Patch> patchesFound = new LinkedHashMap<>();
        Map<Reference, Vocabulary> vocabulariesFound = new LinkedHashMap<>();
        for (Served one : served) {
            one.contents().catalogues().values().forEach(own -> cataloguesFound.putIfAbsent(own.reference(), own));
            one.patches().forEach(patch -> patchesFound.putIfAbsent(patch.reference(), patch));
            one.vocabularies().forEach(own -> vocabulariesFound.putIfAbsent(own.reference(), own));
            for (Model model : one.models()) {
                modelsFound.putIfAbsent(model.reference(), model);
                sourcesFound.putIfAbsent(model.reference(), new ModelSource(one.plugin(), model.reference()));
            }
        }
        this.models = ImmutableMap.copyOf(modelsFound);
        this.sources = ImmutableMap.copyOf(sourcesFound);
        this.catalogues = ImmutableMap.copyOf(cataloguesFound);
        this.patches = ImmutableMap.copyOf(patchesFound);
        this.vocabularies = ImmutableMap.copyOf(vocabulariesFound);
    }

    /**
     * Makes a registry of the given providers and no others.
     *
     * @param providers instances whose classes are annotated with {@link Plugin}
     * @return the registry
     */
    public static Registry of(Collection<? extends GeneticsProvider> providers) {
        return new Registry(Discovery.of(providers), any -> true);
    }

    /**
     * Makes a registry of the plug-ins that the class loader of this library can see, on the class path and the module path. A
     * container that keeps plug-ins elsewhere names the class loader or the layer.
     *
     * @return the registry
     */
    public static Registry discover() {
        return discover(any -> true);
    }

    /**
     * Makes a registry of those plug-ins seen by the class loader of this library that are wanted.
     *
     * @param wanted chooses by descriptor, before anything of a plug-in runs; what it refuses is neither served nor a problem
     * @return the registry
     */
    public static Registry discover(Predicate<ProviderDescriptor> wanted) {
        ClassLoader own = Registry.class.getClassLoader();
        return discover(own == null ? ClassLoader.getSystemClassLoader() : own, wanted);
    }

    /**
     * Makes a registry of the plug-ins that a class loader can see, its parents' and those in modules included.
     *
     * @param loader the class loader
     * @return the registry
     */
    public static Registry discover(ClassLoader loader) {
        return discover(loader, any -> true);
    }

    /**
     * Makes a registry of those plug-ins seen by a class loader that are wanted.
     *
     * <p>Of several plug-ins of one id and version, one can be chosen by its location:
     *
     * <pre>{@code
     * Registry.discover(loader, plugin -> !plugin.id().equals("example.mice") || plugin.location().endsWith("/new/mice.jar"))
     * }</pre>
     *
     * @param loader the class loader
     * @param wanted chooses by descriptor, before anything of a plug-in runs
     * @return the registry
     */
    public static Registry discover(ClassLoader loader, Predicate<ProviderDescriptor> wanted) {
        return new Registry(Discovery.in(loader), wanted);
    }

    /**
     * Makes a registry of the plug-ins in a module layer and its parent layers.
     *
     * @param layer the layer
     * @return the registry
     */
    public static Registry discover(ModuleLayer layer) {
        return discover(layer, any -> true);
    }

    /**
     * Makes a registry of those plug-ins in a module layer and its parent layers that are wanted.
     *
     * @param layer the layer
     * @param wanted chooses by descriptor, before anything of a plug-in runs
     * @return the registry
     */
    public static Registry discover(ModuleLayer layer, Predicate<ProviderDescriptor> wanted) {
        return new Registry(Discovery.in(layer), wanted);
    }

    /**
     * Returns the plug-ins that are served.
     *
     * @return descriptors with checksums
     */
    public List<ProviderDescriptor> providers() {
        return served.stream().map(Served::plugin).toList();
    }

    /**
     * Returns why other plug-ins are not served.
     *
     * @return problems in order of the plug-ins; empty if all that were found are served
     */
    public List<PluginProblem> problems() {
        return problems;
    }

    /**
     * Returns all models.
     *
     * @return models in order of their plug-ins, then of their plug-ins' documents
     */
    public List<Model> models() {
        return models.values().asList();
    }

    /**
     * Finds a model by its id.
     *
     * @param id the id of a model, which may be followed by a space and the version
     * @return the model
     * @throws ProblemsException if there is none, with the nearest known id, or if several versions are served and none is named
     */
    public Model model(String id) {
        return find("model", id, models(), Model::id);
    }

    /**
     * Finds a model by a reference, for example one that was stored with an answer.
     *
     * @param reference id, version and perhaps hash
     * @return the model
     * @throws ProblemsException if there is none of this id and version, or its content is another
     */
    public Model model(Reference reference) {
        return models().stream()
                .filter(model -> reference.means(model.reference()))
                .findFirst()
                .orElseThrow(() -> {
                    String name = reference.id() + " " + reference.version();
                    Optional<Model> other = models().stream()
                            .filter(model -> model.toString().equals(name))
                            .findFirst();
                    return other.map(model -> new ProblemsException(Problem.of(
                                            Stage.REFERENCES,
                                            "other-content",
                                            "",
                                            "the model served is " + model.reference() + ", not " + reference)
                                    .expecting("the content that was referred to")))
                            .orElseGet(() -> unknown(
                                    "model",
                                    name,
                                    models().stream().map(Model::toString).toList()));
                });
    }

    /**
     * Returns the default model of a plug-in.
     *
     * @param plugin one of {@link #providers()}
     * @return the model its descriptor singles out, if it does
     */
    public Optional<Model> defaultModel(ProviderDescriptor plugin) {
        return served.stream()
                .filter(one -> one.plugin().equals(plugin))
                .flatMap(one -> one.models().stream())
                .filter(model -> plugin.defaultModel().equals(Optional.of(model.id())))
                .findFirst();
    }

    /**
     * Tells which plug-in served a model.
     *
     * @param model any model
     * @return the plug-in with its checksum; empty for a model that came from elsewhere
     */
    public Optional<ModelSource> source(Model model) {
        return Optional.ofNullable(sources.get(model.reference()));
    }

    /**
     * Returns all catalogues, for reading further models against them.
     *
     * @return catalogues in order of their plug-ins, then of their plug-ins' documents
     */
    public List<Catalogue> catalogues() {
        return catalogues.values().asList();
    }

    /**
     * Returns all patches.
     *
     * @return patches in order of their plug-ins, then of their plug-ins' documents; the base of each is one of {@link #models()}
     */
    public List<Patch> patches() {
        return patches.values().asList();
    }

    /**
     * Returns the patches of one model.
     *
     * @param base any model
     * @return the patches that were written for it
     */
    public List<Patch> patches(Model base) {
        return patches().stream()
                .filter(patch -> patch.base().means(base.reference()))
                .toList();
    }

    /**
     * Finds a patch by its id.
     *
     * @param id the id of a patch, which may be followed by a space and the version
     * @return the patch
     * @throws ProblemsException if there is none, with the nearest known id, or if several versions are served and none is named
     */
    public Patch patch(String id) {
        return find("patch", id, patches(), Patch::id);
    }

    /**
     * Returns all vocabularies.
     *
     * @return vocabularies in order of their plug-ins, then of their plug-ins' documents
     */
    public List<Vocabulary> vocabularies() {
        return vocabularies.values().asList();
    }

    /**
     * Returns the vocabularies that are about a catalogue.
     *
     * @param catalogue any catalogue, for example that of a model
     * @return the vocabularies whose names speak of its traits
     */
    public List<Vocabulary> vocabularies(Catalogue catalogue) {
        return vocabularies().stream()
                .filter(one -> one.catalogue().reference().equals(catalogue.reference()))
                .toList();
    }

    /**
     * Finds a vocabulary by its id.
     *
     * @param id the id of a vocabulary, which may be followed by a space and the version
     * @return the vocabulary
     * @throws ProblemsException if there is none, with the nearest known id, or if several versions are served and none is named
     */
    public Vocabulary vocabulary(String id) {
        return find("vocabulary", id, vocabularies(), Vocabulary::id);
    }

    /**
     * Returns the cautions that belong to a model: those of any plug-in that are about its catalogue.
     *
     * @param model any model, one read from a file included
     * @return sets of cautions, each once
     */
    public List<CautionSet> cautions(Model model) {
        Set<CautionSet> found = new LinkedHashSet<>();
        for (Served one : served) {
            one.contents().cautions().values().stream()
                    .filter(set -> one.contents().isAbout(set, model.catalogue()))
                    .forEach(found::add);
        }
        return ImmutableList.copyOf(found);
    }

    /**
     * Returns what is held instead of a model: each of its patches by itself, and other models of its plug-in on the same catalogue that
     * rule some of the same traits.
     *
     * @param model any model
     * @return rivals in declared order; each is made when it is first asked
     */
    public List<RivalModel> rivals(Model model) {
        List<RivalModel> found = new ArrayList<>();
        for (Patch patch : patches(model)) {
            found.add(RivalModel.patched(
                    patch.title().orElse(patch.id()),
                    model,
                    List.of(patch),
                    () -> Documents.reader().apply(model, List.of(patch))));
        }
        for (Served one : served) {
            if (one.models().contains(model)) {
                one.models().stream()
                        .filter(other -> !other.equals(model))
                        .filter(other -> other.catalogue()
                                .reference()
                                .equals(model.catalogue().reference()))
                        .filter(other -> !Collections.disjoint(
                                other.rules().keySet(), model.rules().keySet()))
                        .forEach(other -> found.add(RivalModel.of(other.title().orElse(other.id()), () -> other)));
            }
        }
        return found;
    }

    /**
     * Answers under a model, with all cautions that belong to it, and against its rivals.
     *
     * @param model any model
     * @return the answering service, with the model compiled
     */
    public Answers answers(Model model) {
        return Answers.of(CompiledModel.of(model), cautions(model)).against(rivals(model));
    }

    private static <T> T find(String kind, String name, List<T> all, Function<T, String> id) {
        List<T> found = all.stream()
                .filter(one -> id.apply(one).equals(name) || one.toString().equals(name))
                .toList();
        if (found.isEmpty()) {
            throw unknown(kind, name, all.stream().map(id).distinct().toList());
        }
        if (found.size() > 1) {
            throw new ProblemsException(Problem.of(
                            Stage.REFERENCES,
                            "several-versions",
                            "",
                            "the " + kind + " \"" + name + "\" is served in versions")
                    .expecting("one of " + found));
        }
        return found.get(0);
    }

    private static ProblemsException unknown(String kind, String name, Collection<String> known) {
        return new ProblemsException(Problems.unknown(Stage.REFERENCES, "unknown-" + kind, "", kind, name, known));
    }
}
