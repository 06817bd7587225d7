package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.Level;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * One model as an automaton: it reads what is carried, locus by locus, and passes with some chance from state to state, until the
 * animal's look is decided. What chance alone decides is taken on the way.
 */
abstract class Side {

    /**
     * How far the reading has come.
     *
     * @param place the place in the diagram
     * @param hidden which strands are being read of linked loci; nothing where that is over
     */
    record State(int place, ImmutableList<Integer> hidden) {}

    /** Receives states with their chances. */
    interface Reached {
        void at(State state, Probability chance);
    }

    private final Which model;
    private final Sex sex;
    private final Diagram<Phenotype> diagram;
    private final Map<String, Integer> levels = new LinkedHashMap<>();

    Side(Which model, Sex sex, Diagram<Phenotype> diagram) {
        this.model = model;
        this.sex = sex;
        this.diagram = diagram;
        for (int i = 0; i < diagram.levels().size(); i++) {
            levels.put(diagram.levels().get(i).name(), i);
        }
    }

    Which model() {
        return model;
    }

    /** The sex of the animal whose look is in question. */
    Sex sex() {
        return sex;
    }

    Map<State, Probability> start(ImmutableList<Integer> hidden) {
        Map<State, Probability> states = new LinkedHashMap<>();
        settle(
                diagram.root(),
                Probability.ONE,
                hidden,
                (state, chance) -> states.merge(state, chance, Probability::plus));
        return states;
    }

    /** The states before anything is read. */
    abstract Map<State, Probability> start();

    /** The states after a locus is read. */
    abstract Map<State, Probability> read(int position, State state, Carried.Letter letter);

    /** The look, if reading is over; nothing for an animal that is lost. */
    Optional<Phenotype> look(State state) {
        return diagram.outcome(state.place());
    }

    /** Goes on from a state with a genotype of the animal itself. */
    void follow(
            State state,
            Locus locus,
            AllelePair pair,
            Probability chance,
            ImmutableList<Integer> hidden,
            Reached reached) {
        int place = state.place();
        Integer level = levels.get(locus.id());
        if (level != null && diagram.level(place) == level) {
            place = diagram.next(place, locus.expressionPosition(pair, sex));
        }
        settle(place, chance, hidden, reached);
    }

    /** Goes on to the next test of a locus, or the end. */
    private void settle(int place, Probability chance, ImmutableList<Integer> hidden, Reached reached) {
        int at = diagram.level(place);
        if (at == diagram.levels().size() || diagram.levels().get(at) instanceof Level.OfLocus) {
            reached.at(new State(place, hidden), chance);
        } else if (diagram.levels().get(at) instanceof Level.OfDraw drawn) {
            List<Probability> chances =
                    ImmutableList.copyOf(drawn.draw().outcomes().asMap().values());
            for (int value = 0; value < chances.size(); value++) {
                settle(diagram.next(place, value), chance.times(chances.get(value)), hidden, reached);
            }
        } else {
            settle(diagram.next(place, Sex.words().indexOf(sex.word())), chance, hidden, reached);
        }
    }

    /** The loci that the look of this side may depend on. */
    List<String> loci() {
        return diagram.loci();
    }

    /** The look of an animal whose genotype is known. */
    static final class OfAnimal extends Side {
        private final List<ComparedLocus> order;

        OfAnimal(Which model, Sex sex, Diagram<Phenotype> diagram, List<ComparedLocus> order) {
            super(model, sex, diagram);
            this.order = order;
        }

        @Override
        Map<State, Probability> start() {
            return start(ImmutableList.of());
        }

        @Override
        Map<State, Probability> read(int position, State state, Carried.Letter letter) {
            Map<State, Probability> next = new LinkedHashMap<>();
            Optional<Locus> locus = order.get(position).in(model());
            Optional<AllelePair> pair = letter.held().get(0).carried().in(model());
            if (locus.isEmpty() || pair.isEmpty()) {
                return Map.of(state, Probability.ONE);
            }
            follow(
                    state,
                    locus.get(),
                    pair.get(),
                    Probability.ONE,
                    state.hidden(),
                    (reached, chance) -> next.merge(reached, chance, Probability::plus));
            return next;
        }
    }

    static ImmutableList<Integer> closed(int count) {
        return IntStream.range(0, count).mapToObj(any -> -1).collect(ImmutableList.toImmutableList());
    }
}
