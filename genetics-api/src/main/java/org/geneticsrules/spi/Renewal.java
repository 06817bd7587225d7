package org.geneticsrules.spi;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * Puts the versions of today into a question that was asked before: models, patches, cautions and vocabularies of the same ids.
 *
 * <pre>{@code
 * Analysis today = Renewal.of(registry).renew(frozen.analysis());
 * Rerun rerun = frozen.rerun(today);
 * }</pre>
 *
 * <p>What nobody has today stays as it was. The same models are asked as before, no fewer and no more, so that what moves is the doing of their
 * versions; but every caution that belongs to the model today is raised. Records and settings are never changed.
 *
 * <p>Immutable and thread-safe.
 */
public final class Renewal {

    private final Optional<Registry> registry;
    private final ImmutableList<Model> models;
    private final ImmutableList<Patch> patches;

    private Renewal(Optional<Registry> registry, List<Model> models, List<Patch> patches) {
        this.registry = registry;
        this.models = ImmutableList.copyOf(models);
        this.patches = ImmutableList.copyOf(patches);
    }

    /**
     * Takes everything that plug-ins have.
     *
     * @param registry the plug-ins at hand
     * @return the renewal
     */
    public static Renewal of(Registry registry) {
        return new Renewal(Optional.of(registry), List.of(), List.of());
    }

    /**
     * Takes nothing but what is stated.
     *
     * @return a renewal that leaves all as it was, until a model or a patch is stated
     */
    public static Renewal ofStated() {
        return new Renewal(Optional.empty(), List.of(), List.of());
    }

    /**
     * Returns the same with a model that is to be taken for the one of its id, whatever plug-ins have.
     *
     * @param model a model
     * @return a copy
     */
    public Renewal with(Model model) {
        return new Renewal(
                registry,
                ImmutableList.<Model>builder().addAll(models).add(model).build(),
                patches);
    }

    /**
     * Returns the same with a patch that is to be taken for the one of its id, whatever plug-ins have.
     *
     * @param patch a patch
     * @return a copy
     */
    public Renewal with(Patch patch) {
        return new Renewal(
                registry,
                models,
                ImmutableList.<Patch>builder().addAll(patches).add(patch).build());
    }

    /**
     * Returns a question with the versions of today.
     *
     * @param analysis the question as it was asked
     * @return the same question of the models of today
     * @throws ProblemsException if a model or patch was stated that the question does not have, if plug-ins have several versions of one, or
     *     if a patch does not fit the model of today
     * @throws IllegalArgumentException if the population that was named is not in the model of today
     */
    public Analysis renew(Analysis analysis) {
        requireUsed(analysis);
        HeldModel first = renewed(analysis.model());
        return new Analysis(
                analysis.kind(),
                first,
                analysis.rivals().stream().map(this::renewed).toList(),
                cautions(analysis, first.model()),
                analysis.pedigree(),
                analysis.vocabularies().stream()
                        .map(one -> vocabulary(one, first.model()))
                        .toList(),
                analysis.settings());
    }

    private void requireUsed(Analysis analysis) {
        Set<String> known = new LinkedHashSet<>();
        Stream.concat(Stream.of(analysis.model()), analysis.rivals().stream()).forEach(one -> {
            known.add(one.base().id());
            one.patches().forEach(patch -> known.add(patch.id()));
        });
        List<Problem> unknown = Stream.concat(
                        models.stream().map(Model::id), patches.stream().map(Patch::id))
                .filter(id -> !known.contains(id))
                .map(id -> Problems.unknown(
                        Stage.REFERENCES, "not-in-analysis", "", "model or patch of this analysis", id, known))
                .toList();
        if (!unknown.isEmpty()) {
            throw new ProblemsException(unknown);
        }
    }

    private HeldModel renewed(HeldModel one) {
        Model base = pick(one.base(), models, Registry::models, Registry::model, Model::id);
        List<Patch> made = one.patches().stream()
                .map(patch -> pick(patch, patches, Registry::patches, Registry::patch, Patch::id))
                .toList();
        Model model = made.isEmpty() ? base : Documents.reader().apply(base, made);
        return new HeldModel(one.title(), base, made, model, one.prior(), one.fitted());
    }

    /** Finds something by its id. */
    private interface Find<T> {
        T in(Registry registry, String id);
    }

    /** What was stated, else what plug-ins have, else what there was. */
    private <T> T pick(T old, List<T> stated, Function<Registry, List<T>> all, Find<T> find, Function<T, String> id) {
        String name = id.apply(old);
        return stated.stream()
                .filter(one -> id.apply(one).equals(name))
                .findFirst()
                .or(() -> registry.filter(
                                from -> all.apply(from).stream().map(id).anyMatch(name::equals))
                        .map(from -> find.in(from, name)))
                .orElse(old);
    }

    private List<CautionSet> cautions(Analysis analysis, Model model) {
        List<CautionSet> sets =
                new ArrayList<>(registry.map(from -> from.cautions(model)).orElse(List.of()));
        List<String> ids = sets.stream().map(CautionSet::id).toList();
        analysis.cautions().stream().filter(set -> !ids.contains(set.id())).forEach(sets::add);
        return sets;
    }

    private Vocabulary vocabulary(Vocabulary old, Model model) {
        return registry.flatMap(from -> from.vocabularies(model.catalogue()).stream()
                        .filter(one -> one.id().equals(old.id()))
                        .findFirst())
                .orElse(old);
    }
}
