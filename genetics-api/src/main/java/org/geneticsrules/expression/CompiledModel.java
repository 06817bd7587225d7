package org.geneticsrules.expression;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * A model made ready for questions about phenotypes.
 *
 * <pre>{@code
 * CompiledModel compiled = CompiledModel.of(model);
 * Expressed kit = compiled.express(Genotype.parse(model, "c/c B/b"), Set.of("hue"));
 * GenotypeSet behindPink = compiled.showing(Phenotype.of("eye", "pink"));
 * }</pre>
 *
 * <p>Immutable as seen from outside and thread-safe: the diagram of each set of traits is built once, on first use.
 */
public final class CompiledModel {

    private static final int MOST_BOXES = 200_000;

    private final Model model;
    private final ImmutableSet<String> visible;
    private final Map<ImmutableSet<String>, Diagram<Phenotype>> diagrams = new ConcurrentHashMap<>();

    private CompiledModel(Model model) {
        this.model = model;
        this.visible = ImmutableSet.copyOf(model.visibleTraits());
    }

    /**
     * Compiles a model.
     *
     * @param model a model
     * @return the compiled model
     */
    public static CompiledModel of(Model model) {
        return new CompiledModel(model);
    }

    /**
     * Returns the model.
     *
     * @return the model that was compiled
     */
    public Model model() {
        return model;
    }

    /**
     * Returns the loci on which the shown states of some traits depend.
     *
     * @param traits trait ids
     * @return locus ids in model order
     */
    public Set<String> lociRead(Collection<String> traits) {
        return Reads.loci(model, known(traits));
    }

    /**
     * Expresses a genotype and tells every step.
     *
     * @param genotype a genotype that covers at least the loci read
     * @param traits the traits asked for
     * @return what is seen, and how it came about
     * @throws IllegalArgumentException if a trait is unknown or a locus that is read is not covered
     */
    public Expressed express(Genotype genotype, Collection<String> traits) {
        Map<String, String> expressions = new LinkedHashMap<>();
        for (String locus : lociRead(traits)) {
            AllelePair pair = genotype.pair(locus)
                    .orElseThrow(() -> new IllegalArgumentException("the genotype \"" + genotype
                            + "\" does not say what locus " + locus + " carries, which " + traits + " depend on"));
            expressions.put(locus, model.locus(locus).expression(pair, Sex.FEMALE));
        }
        return express(expressions, traits);
    }

    /**
     * Expresses a combination of expressions and tells every step.
     *
     * @param expressions the expression of at least each locus read
     * @param traits the traits asked for
     * @return what is seen, and how it came about
     * @throws IllegalArgumentException if a trait is unknown or an expression is missing
     */
    public Expressed express(Map<String, String> expressions, Collection<String> traits) {
        Set<String> asked = known(traits);
        Set<String> read = Reads.loci(model, asked);
        if (!expressions.keySet().containsAll(read)) {
            throw new IllegalArgumentException(
                    "the expressions " + expressions + " do not cover the loci read, " + read);
        }
        return new Interpreter(model, expressions).express(asked);
    }

    /**
     * Returns the diagram of all visible traits of the model.
     *
     * @return the diagram, built on first use
     * @throws TooLargeException if the diagram would be too large
     */
    public Diagram<Phenotype> diagram() {
        return built(visible);
    }

    /**
     * Returns the diagram of some traits.
     *
     * @param traits trait ids
     * @return the diagram, built on first use
     * @throws IllegalArgumentException if a trait is unknown
     * @throws TooLargeException if the diagram would be too large
     */
    public Diagram<Phenotype> diagram(Collection<String> traits) {
        return built(known(traits));
    }

    private Diagram<Phenotype> built(ImmutableSet<String> traits) {
        return diagrams.computeIfAbsent(traits, asked -> new DiagramBuilder(model, asked).build());
    }

    /**
     * Returns the genotypes that show a phenotype: what is seen, as evidence about what is carried.
     *
     * @param phenotype a full or partial phenotype; a trait for which the model makes no claim counts as evidence of nothing
     * @return the set of genotypes that show every state named, or for which the model makes no claim about it
     * @throws IllegalArgumentException if a trait is unknown
     * @throws TooLargeException if the set needs too many boxes
     */
    public GenotypeSet showing(Phenotype phenotype) {
        Diagram<Phenotype> diagram = diagram(phenotype.traits());
        ImmutableMap.Builder<String, List<String>> variables = ImmutableMap.builder();
        model.loci().forEach((name, locus) -> variables.put(name, locus.expressions()));
        List<Condition> boxes = new ArrayList<>();
        diagram.paths((outcome, box) -> {
            Phenotype seen = diagram.outcomes().get(outcome);
            if (phenotype.restrictedTo(seen.traits()).equals(seen)) {
                boxes.add(box);
            }
            if (boxes.size() > MOST_BOXES) {
                throw new TooLargeException(
                        "boxes of genotypes", boxes.size(), MOST_BOXES, "ask about fewer traits at a time.");
            }
            return true;
        });
        return GenotypeSet.showing(model, BoxSpace.of(variables.buildOrThrow()).ofDisjoint(boxes));
    }

    private ImmutableSet<String> known(Collection<String> traits) {
        for (String trait : traits) {
            if (model.states(trait).isEmpty()) {
                throw new IllegalArgumentException(
                        "no trait \"" + trait + "\" in model " + model + "; it models " + model.visibleTraits());
            }
        }
        return ImmutableSet.copyOf(traits);
    }
}
