package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.trait.Phenotype;

/**
 * Why an animal of known genotype looks as it does, and what its look does not tell.
 *
 * @param phenotype what is seen in the traits asked for
 * @param looks how each trait came about, in the order asked
 * @param hidden the loci that cannot be read off the animal
 * @param statements pointers of the statements that the look rests on
 */
public record CoatExplanation(Phenotype phenotype, List<Look> looks, List<Hidden> hidden, Set<String> statements) {

    /**
     * Copies the collections.
     *
     * @param phenotype what is seen
     * @param looks how each trait came about
     * @param hidden the hidden loci
     * @param statements pointers of statements
     */
    public CoatExplanation {
        looks = ImmutableList.copyOf(looks);
        hidden = ImmutableList.copyOf(hidden);
        statements = ImmutableSet.copyOf(statements);
    }

    /**
     * Explains the look of a genotype.
     *
     * <p>A locus is hidden if another pair in its place gives the same phenotype; every such pair is tried.
     *
     * @param compiled the model
     * @param genotype a genotype that covers at least the loci read
     * @param traits the traits asked for
     * @return the explanation
     * @throws IllegalArgumentException if a trait is unknown or a locus that is read is not covered
     */
    public static CoatExplanation of(CompiledModel compiled, Genotype genotype, Collection<String> traits) {
        Model model = compiled.model();
        Expressed expressed = compiled.express(genotype, traits);
        List<Look> looks = new ArrayList<>();
        for (String trait : traits) {
            TraitTrace trace = Objects.requireNonNull(expressed.traits().get(trait));
            Optional<String> rule = trace.rule()
                    .flatMap(pointer -> Optional.ofNullable(model.statements().get(pointer)))
                    .map(Statement::text);
            looks.add(new Look(trace, rule));
        }
        Map<String, List<AllelePair>> carried = new LinkedHashMap<>();
        List<Hidden> hidden = new ArrayList<>();
        for (String name : compiled.lociRead(traits)) {
            Locus locus = model.locus(name);
            carried.put(name, List.of(genotype.pair(name).orElseThrow()));
            List<AllelePair> alike = locus.pairs().stream()
                    .filter(pair -> compiled.express(genotype.with(pair), traits)
                            .phenotype()
                            .equals(expressed.phenotype()))
                    .toList();
            if (alike.size() > 1) {
                List<Cause> causes = Causes.of(compiled, expressed.expressions(), name, alike, traits);
                hidden.add(new Hidden(name, expressed.phenotype(), alike, Optional.empty(), causes));
            }
        }
        return new CoatExplanation(expressed.phenotype(), looks, hidden, RestsOn.of(compiled, carried, traits));
    }
}
