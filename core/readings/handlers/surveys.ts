/** Surveys of flatness, as the screens ask for them. */
import type { Handlers } from '../../host/implement.ts';
import { notFound } from '../../kernel/errors.ts';
import { openBench } from '../compute/bench.ts';
import { surveyOf } from '../compute/deck-survey.ts';
import type { readingsContract } from '../contract.ts';
import { readFacts } from '../store/facts.ts';

export const surveyHandlers: Pick<Handlers<typeof readingsContract>, 'readings/get-deck-survey'> = {
  'readings/get-deck-survey': {
    run({ casting, face }, { db, today }) {
      const survey = surveyOf(openBench(readFacts(db, casting, today)), face);
      if (!survey) throw notFound('readings/no-such-face', 'This face');
      return survey;
    },
  },
};
