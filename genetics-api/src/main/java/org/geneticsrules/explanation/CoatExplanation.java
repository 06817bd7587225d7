package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Why an animal of known genotype looks as it does, and what its look does not tell.
 *
 * @param phenotype what is seen in the traits asked for
 * @param looks how each trait came about, in the order asked
 * @param draws what chance decided, by the pointer of the case whose chance it was
 * @param hidden the loci that cannot be read off the animal
 * @param statements pointers of the statements that the look rests on
 */
public record CoatExplanation(
        Phenotype phenotype, List<Look> looks, Map<String, String> draws, List<Hidden> hidden, Set<String> statements) {

    /**
     * Copies the collections.
     *
     * @param phenotype what is seen
     * @param looks how each trait came about
     * @param draws what chance decided
     * @param hidden the hidden loci
     * @param statements pointers of statements
     */
    public CoatExplanation {
        looks = ImmutableList.copyOf(looks);
        draws = ImmutableMap.copyOf(draws);
        hidden = ImmutableList.copyOf(hidden);
        statements = ImmutableSet.copyOf(statements);
    }

    /**
     * Explains the looks of an animal of known genotype.
     *
     * @param compiled the model
     * @param genotype a genotype that covers all loci the traits depend on
     * @param sex the animal's sex
     * @param view what is looked at
     * @return each way in which chance may decide about its looks, with its chance; one way where chance plays no part
     * @throws IllegalArgumentException if a trait is unknown or a locus is not covered
     */
    public static Distribution<CoatExplanation> of(CompiledModel compiled, Genotype genotype, Sex sex, View view) {
        Map<String, List<AllelePair>> carried = new LinkedHashMap<>();
        for (String name : compiled.lociRead(view.among(Census.CONCEIVED))) {
            Locus locus = compiled.model().locus(name);
            carried.put(
                    name,
                    List.of(genotype.pair(name).orElseGet(() -> locus.pairs(sex).get(0))));
        }
        Set<String> statements = RestsOn.of(compiled, carried, Optional.of(sex), view.among(Census.CONCEIVED))
                .statements();
        Exchange instead = new Exchange(compiled, genotype, sex, view);
        return compiled.express(genotype, sex, view.stage(), view.traits())
                .map(expressed -> explain(compiled, genotype, sex, view, expressed, statements, instead));
    }

    private static CoatExplanation explain(
            CompiledModel compiled,
            Genotype genotype,
            Sex sex,
            View view,
            Expressed expressed,
            Set<String> statements,
            Exchange instead) {
        Model model = compiled.model();
        List<Look> looks = new ArrayList<>();
        for (String trait : view.traits()) {
            TraitTrace trace = Objects.requireNonNull(expressed.traits().get(trait));
            Optional<String> rule = trace.rule()
                    .flatMap(pointer -> Optional.ofNullable(model.statements().get(pointer)))
                    .map(Statement::text);
            looks.add(new Look(trace, rule));
        }
        List<Hidden> hidden = new ArrayList<>();
        for (String name : compiled.lociRead(view.among(Census.CONCEIVED))) {
            Locus locus = model.locus(name);
            List<AllelePair> alike = locus.pairs(sex).stream()
                    .filter(pair -> genotype.pair(name).isEmpty() || instead.mayShow(pair, expressed.phenotype()))
                    .toList();
            if (alike.size() > 1) {
                List<Cause> causes =
                        Causes.in(compiled, view, sex, draws(expressed)).of(expressed.expressions(), name, alike);
                hidden.add(new Hidden(name, expressed.phenotype(), alike, Optional.empty(), causes));
            }
        }
        return new CoatExplanation(expressed.phenotype(), looks, draws(expressed), hidden, statements);
    }

    /** What chance decided, by the case whose chance it was. */
    private static Map<String, String> draws(Expressed expressed) {
        Map<String, String> draws = new LinkedHashMap<>();
        for (TraitTrace trace : expressed.traits().values()) {
            trace.draw().ifPresent(outcome -> draws.put(trace.rule().orElseThrow(), outcome));
        }
        return draws;
    }
}
